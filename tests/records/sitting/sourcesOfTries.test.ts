import { describe, expect, test } from "vitest";
import { tryRow } from "../../../src/app/verdicts/sittingWords";
import { isRight, type TryResult, zeroShown } from "../../../src/drill/marking/tryResult";
import type { Admission } from "../../../src/drill/sheet/admission";
import type { Station } from "../../../src/drill/sheet/sheet";
import { describeSource, type SourceDescription } from "../../../src/realdial/sources/sourceDescription";
import { SCREEN_SOURCE } from "../../../src/realdial/sources/sourcesSeen";
import { recordHash } from "../../../src/records/hashedRecord";
import { checkRecord } from "../../../src/records/sitting/checkRecord";
import { recordSchema } from "../../../src/records/sitting/recordSchema";
import { sittingRecord } from "../../../src/records/sitting/sittingRecord";
import { checkedInWords } from "../../support/checkedInWords";
import {
  changeStation,
  dialingStation,
  fittingStation,
  handoverStation,
  testSheet,
  troubleStation,
  zeroingStation,
} from "../../support/testSheet";
import { changeTry, dialingTry, fittingTry, handoverTry, troubleTry, zeroingTry } from "../../support/testTries";

const VERSION = "0.1.0";
const ENCODER = describeSource("encoder", 100 / 2400, 0.012);
const KNOB = describeSource("midi", 1.5);

/** A try with its station, by the kind. */
const TRIES: readonly (readonly [Station, TryResult])[] = [
  [dialingStation({ repetitions: 1 }), dialingTry()],
  [zeroingStation({ repetitions: 1 }), zeroingTry()],
  [changeStation({ repetitions: 1 }), changeTry()],
  [troubleStation({ repetitions: 1 }), troubleTry()],
  [handoverStation({ repetitions: 1 }), handoverTry()],
];

/** What a check says of the sources of one try, hash and marks made anew. */
function saidOf(station: Station, one: TryResult): readonly string[] {
  const record = sittingRecord({
    ...{ sheet: testSheet({ stations: [station] }), seed: 5, appVersion: VERSION, person: "Pelline" },
    ...{ startedAt: "2026-11-25T08:00:00.000Z", worked_ms: 5_000_000, pauses: 0, interruptions: 0 },
    ...{ tries: [one], answers: [], ended: "finished" },
  });
  const read = recordSchema.safeParse(JSON.parse(JSON.stringify(record)));
  if (!read.success) return ["not read"];
  const { problems } = checkedInWords(checkRecord(record, recordHash(record), VERSION));
  return problems.filter((one) => /turn|screen|coarse/.test(one));
}

describe.each(TRIES)("a try, what turned its dial: $kind", (station, one) => {
  test.each([[[ENCODER]], [[SCREEN_SOURCE, ENCODER]], [[KNOB]]])("is read and checks: %j", (sources) => {
    expect(saidOf(station, { ...one, sources } as TryResult)).toEqual([]);
  });

  test.each<[SourceDescription[], string]>([
    [[], "Try 1 lists what turned the dial, but the list is empty."],
    [[SCREEN_SOURCE], "Try 1 lists the screen alone as what turned the dial, which no record does."],
    [[ENCODER, ENCODER], "Try 1 lists the same source of turning twice."],
    [
      [{ ...KNOB, isCoarse: false }],
      "Try 1 names a source with steps of half a graduation or more, but does not call it coarse.",
    ],
  ])("is named where it cannot be: %j", (sources, says) => {
    expect(saidOf(station, { ...one, sources } as TryResult)).toEqual([says]);
  });

  test("is read with its doubts, which stand in its row", () => {
    const doubted = { ...one, sources: [ENCODER], doubts: ["sight-lost", "gap"] } as TryResult;
    expect(saidOf(station, doubted)).toEqual([]);
    const sheet = testSheet({ stations: [station] });
    expect(tryRow(doubted, sheet).outcome).toBe(`${tryRow(one, sheet).outcome}, turns in doubt`);
    expect(isRight(doubted, station)).toBe(isRight(one, station));
  });

  test.each<[object, string]>([
    [{ doubts: ["gap"] }, "Try 1 has turns in doubt, but no device turned its dial."],
    [{ sources: [ENCODER], doubts: ["gap", "gap"] }, "Try 1 gives the same doubt of its turns twice."],
    [{ sources: [ENCODER], doubts: ["wind"] }, "not read"],
    [{ sources: [ENCODER], doubts: Array(9).fill("gap") }, "not read"],
    [{ sources: [ENCODER], doubts: "gap" }, "not read"],
  ])("is named, or not read, where its doubts cannot be: %j", (fields, says) => {
    expect(saidOf(station, { ...one, ...fields } as TryResult)).toEqual([says]);
  });

  test("stands in its row, and nothing does where the screen alone turned it", () => {
    const sheet = testSheet({ stations: [station] });
    expect(tryRow(one, sheet).turnedWith).toBeNull();
    expect(tryRow({ ...one, sources: [ENCODER] } as TryResult, sheet).turnedWith).toBe(
      "Turned with an encoder (steps of 0.042 graduations; noise at rest 0.012 graduations)",
    );
  });
});

test("a fitting turns no dial: a record that says so is not read", () => {
  const [station, one] = TRIES[0] ?? [];
  if (station === undefined || one === undefined) throw new Error("there is a try");
  const fitted = fittingTry();
  const fittedAt = fittingStation({ repetitions: 1 });
  expect(saidOf(fittedAt, fitted)).toEqual([]);
  for (const fields of [{ sources: [ENCODER] }, { doubts: ["gap"] }])
    expect(saidOf(fittedAt, { ...fitted, ...fields } as TryResult)).toEqual(["not read"]);
});

/** Which of the two counts where a sheet admits something. */
const ADMITTED: readonly (readonly [Admission, boolean, boolean])[] = [
  ["any", true, true],
  ["screen", false, true],
  ["real-dial", true, false],
];

test.each(ADMITTED)(
  "a sheet that admits %s: encoder %s, screen %s, at a dial and at a zero",
  (turnedBy, real, plain) => {
    const dialed = dialingStation({ turnedBy });
    const zeroed = zeroingStation({ turnedBy });
    const turned = { sources: [ENCODER] };
    expect([isRight(dialingTry(turned), dialed), isRight(dialingTry(), dialed)]).toEqual([real, plain]);
    const shown = [zeroShown(zeroingTry(turned), zeroed), zeroShown(zeroingTry(), zeroed)];
    expect(shown.map((one) => one === "accept")).toEqual([real, plain]);
  },
);
