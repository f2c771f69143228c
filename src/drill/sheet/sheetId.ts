import type { Sheet } from "./sheet";

/** "Friday sitting" as part of an address: "friday-sitting". */
export function sheetId({ title }: Pick<Sheet, "title">): string {
  return title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
}
