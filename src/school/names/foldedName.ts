import { JOINERS } from "./readable";

/** A name as it is stored: one form of each letter that looks the same (NFC), no white space at its ends, one space between. */
export const tidyName = (name: string): string => name.normalize("NFC").trim().replace(/\s+/gu, " ");

/**
 * A name as it is compared with another: every form of a letter alike (NFKC), case and white space folded, without joiners,
 * which nobody tells from none. Two people whose names fold to one text cannot be told apart by it.
 */
export const foldedName = (name: string): string =>
  // Small letters of capital ones: "ß" and "SS", "ς" and "σ" come to one text so.
  tidyName(name.replace(JOINERS, "").normalize("NFKC").toUpperCase().toLowerCase().normalize("NFKC"));
