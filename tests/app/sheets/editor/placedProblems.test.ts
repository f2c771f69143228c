import { describe, expect, it } from "vitest";
import { blankSheet, newStation } from "../../../../src/app/sheets/editor/newSheet";
import {
  fieldSentence,
  placedDoubts,
  placeWords,
  sheetProblems,
} from "../../../../src/app/sheets/editor/placedProblems";
import type { Sheet, Station } from "../../../../src/drill/sheet/sheet";
import { SHIPPED_SHEETS } from "../../../../src/drill/sheet/shippedSheets";
import { pathText } from "../../../../src/wording/problem";

const withStations = (...stations: readonly object[]): Sheet => ({ ...blankSheet(), stations: stations as Station[] });
const station = (fields: object, id = "station 1") => ({ ...newStation("dialing", { stations: [] }), id, ...fields });

describe("the sentence beside a field", () => {
  const said = (sheet: object) => sheetProblems(sheet as Sheet).map((one) => [pathText(one.path), fieldSentence(one)]);
  const claim = { rate: 0.2, confidence: 0.9 };
  it.each([
    [{ ...blankSheet(), title: 1 }, "title", "Must be a text of 1 to 120 characters, not 1."],
    [{ ...blankSheet(), title: "" }, "title", "Enter a title of 1 to 120 characters."],
    [{ ...blankSheet(), purpose: "" }, "purpose", "Enter 1 to 600 characters."],
    [
      withStations(station({ repetitions: 3, passMarks: { firstTime: 4 } })),
      "stations[0].passMarks.firstTime",
      "Asks for 4 of 3 tries.",
    ],
    [
      withStations(station({ repetitions: Number.NaN })),
      "stations[0].repetitions",
      "Must be a whole number from 1 to 200; what is typed is not a number.",
    ],
    [
      withStations(station({ passMarks: { claim } })),
      "stations[0].passMarks.claim.rate",
      "Must be from 50 to 99.9 %, not 0.2.",
    ],
  ])("%#", (sheet, path, says) => {
    expect(said(sheet)).toEqual([[path, says]]);
  });
});

describe("sheetProblems", () => {
  it("finds nothing wrong with a blank sheet, nor with any that is shipped", () => {
    expect([blankSheet(), ...SHIPPED_SHEETS].flatMap(sheetProblems)).toEqual([]);
  });

  it("tells of every station and of the rest, each at its place", () => {
    const sheet = {
      ...withStations(station({ repetitions: 0 }), station({}, "b"), station({ upTo: 9 }, "c")),
      title: "",
    };
    expect(sheetProblems(sheet).map(({ path }) => pathText(path))).toEqual([
      "title",
      "stations[0].repetitions",
      "stations[2].upTo",
    ]);
  });

  it("tells of what lies between stations, and of their absence", () => {
    const twice = [{ code: "same-id", path: ["stations", 2, "id"], values: { id: "a" } }];
    expect(sheetProblems(withStations(station({}, "a"), station({}, "b"), station({}, "a")))).toEqual(twice);
    // Also beside another problem, and not where it is no name at all.
    const wrong = withStations(station({ repetitions: 0 }, "a"), station({}, ""), station({}, "a"));
    expect(sheetProblems(wrong).map(({ path }) => pathText(path))).toEqual([
      "stations[0].repetitions",
      "stations[1].id",
    ]);
    expect(sheetProblems(withStations()).map(({ path }) => pathText(path))).toEqual(["stations"]);
  });
});

describe("placedDoubts", () => {
  it("stands at the station whose combination breaks a rule of its lock", () => {
    const fixed = station({ combinations: { policy: "fixed", list: [[10, 40, 70]] } }, "b");
    const doubts = placedDoubts(withStations(station({}), fixed));
    expect(new Set(doubts.map(({ path }) => pathText(path)))).toEqual(new Set(["stations[1]"]));
  });
});

describe("placeWords", () => {
  it.each([
    [["stations", 1, "repetitions"], "Station 2, tries"],
    [["stations", 0], "Station 1"],
    [["stations", 0, "conditions", 2, "size"], "Station 1, size"],
    [["stations", 0, "combinations", "list", 2, "combination", 0], "Station 1, list of combinations"],
    [["title"], "Title"],
    [["stations"], "Stations"],
    [[], "Sheet"],
  ])("says where %s is", (path, words) => {
    expect(placeWords(path)).toBe(words);
  });
});
