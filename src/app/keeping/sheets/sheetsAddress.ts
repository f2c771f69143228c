import type { Sheet } from "../../../drill/sheet/sheet";
import { sheetFromLink, sheetToLink } from "../../../drill/sheet/sheetLink";
import { SHIPPED_SHEETS } from "../../../drill/sheet/shippedSheets";
import { ProblemError } from "../../../wording/problem";
import { messageOf } from "../../parts/page/messageOf";

/** What an address of this screen asks for. */
export type SheetsAddress =
  | { readonly shows: "shelf" }
  | { readonly shows: "own"; readonly id: string }
  | { readonly shows: "sample" | "link"; readonly sheet: Sheet }
  | { readonly shows: "problem"; readonly says: string };

const fromLink = (text: string): SheetsAddress => {
  try {
    return { shows: "link", sheet: sheetFromLink(text) };
  } catch (error) {
    const words = error instanceof ProblemError ? error.says : messageOf(error);
    return {
      shows: "problem",
      says: `The sheet in this link cannot be opened: ${words}. Ask for the sheet as a file, or for a new link.`,
    };
  }
};

const sampleAt = (place: string): SheetsAddress => {
  const sheet = SHIPPED_SHEETS[Number(place) - 1];
  return sheet === undefined
    ? {
        shows: "problem",
        says: `There is no sample sheet ${place}. There are ${SHIPPED_SHEETS.length}; choose one below.`,
      }
    : { shows: "sample", sheet };
};

/** Reads `#/sheets`, `#/sheets?own=ID`, `#/sheets?sample=3` and `#/sheets?sheet=s1....`. */
export function sheetsAddress(query: URLSearchParams): SheetsAddress {
  const link = query.get("sheet");
  if (link !== null) return fromLink(link);
  const sample = query.get("sample");
  if (sample !== null) return sampleAt(sample);
  const id = query.get("own");
  return id === null ? { shows: "shelf" } : { shows: "own", id };
}

/** The address of a page that shows or practices a whole sheet, or a sentence that says why there is none. */
export function linkOf(
  sheet: Sheet,
  page: "sheets" | "sittings",
): { readonly hash: string } | { readonly says: string } {
  try {
    return { hash: `#/${page}?sheet=${sheetToLink(sheet)}` };
  } catch (error) {
    return { says: messageOf(error) };
  }
}
