import { describe, expect, test } from "vitest";
import { SHEETS_TO_SIT, sheetAskedFor } from "../../../../src/app/keeping/sheets/sheetChoice";
import { placedDoubts } from "../../../../src/app/sheets/editor/placedProblems";
import { sheetToLink } from "../../../../src/drill/sheet/sheetLink";
import { SHIPPED_SHEETS } from "../../../../src/drill/sheet/shippedSheets";
import { SHEET_WORDS } from "../../../../src/handover/sheetWords";
import { sittingProblem } from "../../../../src/handover/stationNeeds";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { problemText } from "../../../../src/wording/problem";
import { dialingStation, handoverStation, testSheet, troubleStation } from "../../../support/testSheet";

const NONE = { code: "none", path: [], values: {} };

describe("which sheets can be sat", () => {
  test("every shipped one is offered, and can be", () => {
    expect(SHEETS_TO_SIT.map(({ sheet }) => sheet.title).sort()).toEqual(
      SHIPPED_SHEETS.map(({ title }) => title).sort(),
    );
    expect(SHIPPED_SHEETS.map(sittingProblem).filter((problem) => problem !== null)).toEqual([]);
  });

  test("a condition that nobody knows is told with its station, by the link and beside the field", () => {
    const sheet = testSheet({
      stations: [dialingStation(), troubleStation({ title: "Boiler room", pool: ["index-slipped", "door-warped"] })],
    });
    expect(() => sheetAskedFor(sheetToLink(sheet))).toThrow(
      /^station "Boiler room": "door-warped" is not a known defect; use index-slipped, /,
    );
    expect(placedDoubts(sheet).map((doubt) => problemText(doubt, SHEET_WORDS))).toEqual([
      expect.stringMatching(/^stations\[1\].pool: "door-warped" is not a known defect/),
    ]);
  });

  test("a pool of conditions that the lock cannot have is told with those that it can", () => {
    const stations = [troubleStation({ id: "pack", pool: ["pause-short"] })];
    expect(problemText(sittingProblem({ stations }) ?? NONE, SHEET_WORDS)).toMatch(
      /^station "pack": .* can have none of these defects; use .*wheel-off/,
    );
    expect(sittingProblem({ stations: [troubleStation({ pool: ["pause-short", "wheel-off"] })] })).toBeNull();
  });

  test("a handover of a lock that takes no change key is told", () => {
    const { changing: _, ...unkeyed } = { changing: null, ...shippedProfile("three-wheel") };
    const stations = [handoverStation({ profile: unkeyed as never })];
    expect(problemText(sittingProblem({ stations }) ?? NONE, SHEET_WORDS)).toMatch(
      /^station "handover": the combination of .* cannot be changed/,
    );
  });
});
