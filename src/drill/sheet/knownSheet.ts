import type { Sheet } from "./sheet";
import { sheetSha256 } from "./sheetFingerprint";

/** How the sheet of a record stands to the sheets that an instructor has. */
export type SheetMatch =
  /** What counts is the same, whatever its wording. */
  | { readonly kind: "same"; readonly title: string }
  /** An own sheet of this name asks for something else: a mark may have been eased. */
  | { readonly kind: "differs"; readonly title: string }
  | { readonly kind: "unknown" };

const nameOf = ({ title }: Pick<Sheet, "title">) => title.trim().toLowerCase();

/**
 * Looks a sheet up among others, by what counts and then by its title.
 *
 * @param sheet - title and fingerprint of the sheet looked up, as its checked record has them
 * @param own - sheets to compare with
 */
export function matchingSheet(
  { title, sheetSha256: hash }: { readonly title: string; readonly sheetSha256: string },
  own: readonly Sheet[],
): SheetMatch {
  const same = own.find((one) => sheetSha256(one) === hash);
  if (same !== undefined) return { kind: "same", title: same.title };
  const named = own.find((one) => nameOf(one) === nameOf({ title }));
  return named === undefined ? { kind: "unknown" } : { kind: "differs", title: named.title };
}
