/** A name as it is stored: one form of each letter that looks the same (NFC), no white space at its ends, one space between. */
export const tidyName = (name: string): string => name.normalize("NFC").trim().replace(/\s+/gu, " ");

/**
 * A name as it is compared with another: every form of a letter alike (NFKC), case and white space folded. Two people
 * whose names fold to one text cannot be told apart by it.
 */
export const foldedName = (name: string): string =>
  // Small letters of capital ones: "ß" and "SS", "ς" and "σ" come to one text so.
  tidyName(name.normalize("NFKC").toUpperCase().toLowerCase().normalize("NFKC"));

/** Half a surrogate pair (Cs) is among them: a database stores another sign in its place. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Co}\p{Cn}\p{Cs}\p{Zl}\p{Zp}]/u;

/** Whether a name can be read by everybody: something is there, and no sign that is not seen. */
export const isReadableName = (name: string): boolean => /[\p{L}\p{N}]/u.test(name) && !UNSEEN.test(name);
