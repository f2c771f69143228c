import { describe, expect, test } from "vitest";
import { conditionsAt } from "../../src/drill/sheet/conditionsAt";
import { parseSheet } from "../../src/drill/sheet/parseSheet";
import { planTries } from "../../src/drill/sheet/planTries";
import type { Sheet } from "../../src/drill/sheet/sheet";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { missesToRedo } from "../../src/progress/missesToRedo";
import { practiceSheet, redoSheet } from "../../src/progress/practiceSheet";
import { whatNext } from "../../src/progress/whatNext";
import type { AttemptRecord } from "../../src/records/attemptRecord";
import { seededChance } from "../../src/statistics/chance";
import { anAttempt, NOON } from "../support/logbookRecords";

const stationsOf = (sheet: Sheet | null) => (sheet?.stations ?? []).filter((one) => one.kind === "dialing");

describe("the misses as a sheet", () => {
  const miss = (id: string, other: Partial<AttemptRecord>) => anAttempt(id, { opened: false, ...other });

  test("ask for each once, under the settings it was missed under: then it is made good", () => {
    const misses = [
      miss("a", { conditions: ["index offset 0.4", "no cutaway"], help: "counts" }),
      miss("b", { exercise: "first 2", combination: [11, 48, 73] }),
      miss("c", {
        profileId: "own",
        ownProfile: JSON.parse(JSON.stringify(shippedProfile("two-wheel"))),
        combination: [7, 48],
      }),
    ];
    const sheet = redoSheet(misses);
    expect(parseSheet(JSON.parse(JSON.stringify(sheet))).stations).toHaveLength(3);
    const [first, second, third] = stationsOf(sheet);
    expect(first && conditionsAt(first, 1)).toMatchObject({ indexOffset: 0.4, cutaway: false });
    expect(first).toMatchObject({ help: "counts", combinations: { list: [[29, 92, 54]] }, repetitions: 1 });
    expect(second).toMatchObject({ upTo: 2, combinations: { list: [[11, 48, 73]] } });
    expect(third?.profile).toMatchObject({ id: "two-wheel" });
    // What the logbook keeps of the tries has the settings of the misses.
    const redone = misses.map((one) => ({ ...one, id: `${one.id} again`, opened: true }));
    expect(missesToRedo([...misses, ...redone])).toEqual([]);
  });

  test("leave out what cannot be set up here, and are no sheet where nothing is left", () => {
    const odd = [
      miss("a", { profileId: "elsewhere" }),
      miss("b", { conditions: ["rain"] }),
      // The bench can have it, a sheet cannot.
      miss("f", { conditions: ["runout 0.3 40"] }),
      miss("c", { exercise: "blindfold" }),
      miss("d", { combination: [1, 2] }),
    ];
    expect(redoSheet(odd)).toBeNull();
    expect(stationsOf(redoSheet([...odd, miss("e", {})]))).toHaveLength(1);
    expect(redoSheet([])).toBeNull();
  });

  test("are never more than a sheet takes", () => {
    const many = Array.from({ length: 60 }, (_, i) => miss(`m${i}`, {}));
    const sheet = redoSheet(many);
    expect(stationsOf(sheet)).toHaveLength(40);
    expect(() => parseSheet(sheet)).not.toThrow();
  });
});

describe("a run of practice", () => {
  /** Openings in a row at two locks: the more, the nearer both are to being shown. */
  const afterOpenings = (openings: number) => {
    const attempts = Array.from({ length: openings }, (_, i) => i).flatMap((i) => [
      anAttempt(`a${i}`, { startedAt: NOON + i }),
      anAttempt(`b${i}`, { startedAt: NOON + i, profileId: "dial-encoder", combination: [12, 71, 43] }),
    ]);
    const { suggestions, order } = whatNext(attempts, [], NOON);
    return practiceSheet(suggestions, order);
  };
  const placesOf = (sheet: Sheet | null) =>
    sheet === null
      ? ""
      : planTries(sheet, seededChance(4))
          .map(({ station }) => station)
          .join("");

  test("goes from lock after lock to locks in turn to locks by chance, and its help fades", () => {
    const sheets = [1, 6, 9].map(afterOpenings);
    expect(sheets.map((sheet) => sheet?.order)).toEqual(["blocked", "interleaved", "random"]);
    expect(sheets.map((sheet) => stationsOf(sheet).map(({ help }) => help))).toEqual([
      ["full", "full"],
      ["counts", "counts"],
      ["counts", "counts"],
    ]);
    const [blocked, serial, random] = sheets.map(placesOf);
    expect([blocked, serial]).toEqual(["00001111", "01010101"]);
    expect(random?.split("").sort().join("")).toBe("00001111");
    expect(["00001111", "01010101"]).not.toContain(random);
    for (const sheet of sheets) expect(() => parseSheet(sheet)).not.toThrow();
  });

  test("keeps its numbers while one lock is practiced many times over, and draws new ones later", () => {
    const different = (sheet: Sheet | null) =>
      new Set(sheet === null ? [] : planTries(sheet, seededChance(4)).map(({ combination }) => `${combination}`)).size;
    expect(different(afterOpenings(1))).toBe(2);
    expect(different(afterOpenings(9))).toBe(8);
  });

  test("is none where all is shown and nothing is due, and leaves misses to their own sheet", () => {
    expect(afterOpenings(12)).toBeNull();
    const { suggestions, order } = whatNext([anAttempt("a", { opened: false })], [], NOON);
    expect(suggestions.map(({ kind }) => kind)).toEqual(["redo-misses", "go-on"]);
    expect(stationsOf(practiceSheet(suggestions, order))).toHaveLength(1);
  });
});
