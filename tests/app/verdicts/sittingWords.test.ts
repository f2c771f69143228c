import { describe, expect, test } from "vitest";
import { ownSheetsToSit, SHEETS_TO_SIT, sheetAskedFor } from "../../../src/app/keeping/sheets/sheetChoice";
import {
  clockText,
  resultAdvice,
  ruleSentences,
  stationRow,
  tryRow,
  verdictHeadline,
} from "../../../src/app/verdicts/sittingWords";
import { markingScheme } from "../../../src/drill/marking/markingScheme";
import { markSitting } from "../../../src/drill/marking/markSitting";
import type { TryResult } from "../../../src/drill/marking/tryResult";
import { sheetId } from "../../../src/drill/sheet/sheetId";
import { sheetToLink } from "../../../src/drill/sheet/sheetLink";
import type { SittingRecord } from "../../../src/records/sitting/sittingRecord";
import {
  dialingStation,
  fittingStation,
  inspectionStation,
  serviceStation,
  testSheet,
  zeroingStation,
} from "../../support/testSheet";
import { dialingTry, triesRight, zeroingTry } from "../../support/testTries";

describe("a clock", () => {
  test.each([
    [0, "0:00"],
    [65_900, "1:05"],
    [3_600_000, "1:00:00"],
    [-5, "0:00"],
  ])("of %d ms reads %s", (time, text) => {
    expect(clockText(time)).toBe(text);
  });
});

describe("the choice of a sheet", () => {
  test("has a name of its own for every shipped sheet, those with sitting rules first", () => {
    const ids = SHEETS_TO_SIT.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const ruled = SHEETS_TO_SIT.map(({ sheet }) => sheet.sitting !== undefined);
    expect(ruled).toEqual(ruled.toSorted((one, other) => Number(other) - Number(one)));
  });

  test("takes an id, the text of a link, and a whole address", () => {
    const sheet = testSheet({ title: "One" });
    const link = sheetToLink(sheet);
    expect(sheetId({ title: " Round again, when you may " })).toBe("round-again-when-you-may");
    expect(sheetAskedFor("friday-sitting").title).toBe("Friday sitting");
    expect(sheetAskedFor(link)).toEqual(sheet);
    expect(sheetAskedFor(`https://example.org/#/sittings?sheet=${link}`)).toEqual(sheet);
  });

  test("offers own sheets that are sound, and counts those that must be mended", () => {
    const [good, bad] = [testSheet({ title: "Mine" }), testSheet({ title: "Half done", stations: [] })];
    const records = [good, bad].map((sheet, i) => ({ id: `s${i}`, body: JSON.parse(JSON.stringify(sheet)) }));
    expect(ownSheetsToSit(records)).toEqual({ sound: [{ id: "s0", sheet: good }], unsound: 1 });
  });

  test("refuses anything else with a sentence", () => {
    expect(() => sheetAskedFor("monday")).toThrow("this link carries no drill sheet");
  });
});

describe("rules in sentences", () => {
  test("of a strict sheet", () => {
    const sitting = { pauseAllowed: false, onReload: "broken-off", clockHideable: true, timeLimit_s: 600 } as const;
    expect(ruleSentences(testSheet({ sitting })).join(" ")).toBe(
      "You have 10 tries. The result is shown after the sitting. You have 10 min in all. Whatever is not done by then counts as missed. You cannot pause. The clock runs until the end. If you close or reload the page, the sitting ends and is recorded as broken off.",
    );
  });

  test("of a station", () => {
    expect(stationRow(dialingStation({ upTo: 1, timeLimit_s: 60 }), 0)).toEqual([
      "Station 1",
      "dial the combination the lock comes with",
      "Three-wheel, 100 graduations (first number only)",
      "no help",
      "10",
      "at most 60 s a try",
    ]);
  });

  test.each([
    [fittingStation({ help: "counts" }), "a dial to fit, all parts in the tray", "gauges without limits"],
    [
      inspectionStation({ help: "counts" }),
      "a fit to judge, with some faults or none in each try",
      "a good fit to compare with",
    ],
    [
      serviceStation({ help: "counts" }),
      "a service visit, with the papers of each lock",
      "a count of what is left to inspect",
    ],
    [dialingStation({ help: "counts" }), "dial the combination the lock comes with", "arrivals counted"],
    [fittingStation({ help: "silent" }), "a dial to fit, all parts in the tray", "no help"],
  ])("what one does at a station, and the help that its kind has", (station, exercise, help) => {
    const row = stationRow(station, 0);
    expect([row[1], row[3]]).toEqual([exercise, help]);
  });
});

describe("a try as a row", () => {
  const sheet = testSheet({ stations: [dialingStation(), zeroingStation()] });
  const row = (one: TryResult) =>
    Object.values(tryRow(one, sheet))
      .filter((cell) => cell !== null)
      .join(" | ");

  test.each<[TryResult, string]>([
    [dialingTry(), "Station 1, try 1 | opened | 1: +0.1 · 2: −0.3 · 3: +0.1 | none | 30.0 s"],
    [
      dialingTry({ opened: false, stopErrors: [0, 4, null], faults: [{ code: "ran-past", number: 2, size: 4 }] }),
      "Station 1, try 1 | not right | 1: 0.0 · 2: +4.0 · 3: – | ran past at number 2 | 30.0 s",
    ],
    [dialingTry({ isBrokenOff: true }), "Station 1, try 1 | lost to a reload | – | – | –"],
    [
      zeroingTry({ station: 1 }),
      "Station 2, try 1 | shown to be good | turning right: +0.1 · turning left: −0.1 | 0 stops refused | 90.0 s",
    ],
    [
      zeroingTry({ station: 1, verdicts: { left: null, right: "accept" }, means: { left: null, right: 0 } }),
      "Station 2, try 1 | not shown | turning right: 0.0 · turning left: open | 0 stops refused | 90.0 s",
    ],
  ])("%#", (one, text) => {
    expect(row(one)).toBe(text);
  });

  test("tells an opening that took too long", () => {
    const slow = testSheet({ stations: [dialingStation({ timeLimit_s: 10 })] });
    expect(tryRow(dialingTry(), slow).outcome).toBe("opened too late");
  });
});

describe("a result in words", () => {
  const sheet = testSheet({
    stations: [dialingStation({ repetitions: 5, passMarks: { claim: { rate: 0.9, confidence: 0.9 } } })],
  });
  const record = (right: number, ended: "finished" | "broken-off") => {
    const tries = triesRight(right, 5);
    const marking = markSitting(markingScheme(sheet), sheet, { tries, answers: [], ended });
    return { sheet, tries, answers: [], ended, marking } as unknown as SittingRecord;
  };

  test("says what a claim still wants", () => {
    expect(resultAdvice(record(4, "finished"))).toEqual([
      "Station 1: with 1 miss, it takes 38 tries to show 90 % with 90 % confidence. You made 5.",
      "22 of 22 shows 90 % with 90 % confidence.",
      "With one miss it takes 37 of 38, with two 50 of 52.",
    ]);
  });

  test("has one headline for each verdict, and one for a sitting broken off", () => {
    expect(verdictHeadline(record(5, "finished"))).toBe("Not shown yet: the tries so far cannot tell.");
    expect(verdictHeadline(record(0, "finished"))).toBe("Not passed.");
    expect(verdictHeadline(record(5, "broken-off"))).toBe("Broken off before the end.");
  });
});
