import { describe, expect, it } from "vitest";
import { blankSheet, newStation } from "../../../src/app/sheets/editor/newSheet";
import { placed, placedDoubts, placeWords, sheetProblems } from "../../../src/app/sheets/editor/placedProblems";
import type { Sheet, Station } from "../../../src/drill/sheet/sheet";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";

const withStations = (...stations: readonly object[]): Sheet => ({ ...blankSheet(), stations: stations as Station[] });
const station = (fields: object, id = "station 1") => ({ ...newStation("dialing", { stations: [] }), id, ...fields });

describe("placed", () => {
  it.each([
    ["sheet: title must be a text, not 1", "title", "Must be a text, not 1."],
    [
      "sheet: stations[3].passMarks.firstTime asks for 4 of 3 tries",
      "stations[3].passMarks.firstTime",
      "Asks for 4 of 3 tries.",
    ],
    [
      "sheet: stations[0].combinations: combination[0] (100) is 0",
      "stations[0].combinations",
      "Combination[0] (100) is 0.",
    ],
    ["sheet: this must be an object", "", "Must be an object."],
    ["stations[1]: 10-20-30: the numbers go up (source)", "stations[1]", "10-20-30: the numbers go up (source)."],
    [
      "sheet: stations[0].repetitions must be whole, not NaN",
      "stations[0].repetitions",
      "Must be whole, not what is typed.",
    ],
    ['sheet: title must be a text of 1 to 120 characters, not ""', "title", "Enter a title of 1 to 120 characters."],
    [
      'sheet: instructions must be a text of 1 to 4000 characters, not ""',
      "instructions",
      "Enter 1 to 4000 characters.",
    ],
  ])("takes %s apart", (message, path, says) => {
    expect(placed(message)).toEqual({ path, says });
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
    expect(sheetProblems(sheet).map(({ path }) => path)).toEqual([
      "title",
      "stations[0].repetitions",
      "stations[2].upTo",
    ]);
  });

  it("tells of what lies between stations, and of their absence", () => {
    const twice = [{ path: "stations[2].id", says: 'The id "a" is there twice.' }];
    expect(sheetProblems(withStations(station({}, "a"), station({}, "b"), station({}, "a")))).toEqual(twice);
    // Also beside another problem, and not where it is no name at all.
    const wrong = withStations(station({ repetitions: 0 }, "a"), station({}, ""), station({}, "a"));
    expect(sheetProblems(wrong).map(({ path }) => path)).toEqual(["stations[0].repetitions", "stations[1].id"]);
    expect(sheetProblems(withStations()).map(({ path }) => path)).toEqual(["stations"]);
  });
});

describe("placedDoubts", () => {
  it("stands at the station whose combination breaks a rule of its lock", () => {
    const fixed = station({ combinations: { policy: "fixed", list: [[10, 40, 70]] } }, "b");
    const doubts = placedDoubts(withStations(station({}), fixed));
    expect(new Set(doubts.map(({ path }) => path))).toEqual(new Set(["stations[1]"]));
  });
});

describe("placeWords", () => {
  it.each([
    ["stations[1].repetitions", "Station 2, tries"],
    ["stations[0]", "Station 1"],
    ["stations[0].conditions[2].size", "Station 1, size"],
    ["title", "Title"],
    ["stations", "Stations"],
    ["", "Sheet"],
  ])("says where %s is", (path, words) => {
    expect(placeWords(path)).toBe(words);
  });
});
