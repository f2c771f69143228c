import { describe, expect, test } from "vitest";
import { canBeSat, SHEETS_TO_SIT, sheetAskedFor } from "../../../src/app/sittings/sheetChoice";
import { sheetToLink } from "../../../src/drill/sheet/sheetLink";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";
import { changeStation, dialingStation, testSheet } from "../../support/testSheet";

describe("a sheet that no sitting has the hands for", () => {
  const mixed = testSheet({ stations: [dialingStation(), changeStation({ title: "With the key" })] });

  test("is not offered, and every other sheet is", () => {
    expect(SHEETS_TO_SIT.every(({ sheet }) => canBeSat(sheet))).toBe(true);
    const left = SHIPPED_SHEETS.filter((sheet) => !SHEETS_TO_SIT.some((one) => one.sheet === sheet));
    expect(left.map(({ title }) => title)).toEqual([
      "Changing week",
      "Trouble hour",
      "First handover",
      "Handover sitting",
    ]);
  });

  test("is refused by its link with a sentence that names the station", () => {
    expect(() => sheetAskedFor(sheetToLink(mixed))).toThrow(
      'the station "With the key" is worked on the Handover page, not in a sitting',
    );
    expect(sheetAskedFor(sheetToLink(testSheet())).title).toBe("A sheet");
  });
});
