import { describe, expect, test } from "vitest";
import { newProgress } from "../../../src/app/sittings/session/sittingProgress";
import { SittingSession } from "../../../src/app/sittings/session/sittingSession";
import { idealMotion } from "../../../src/dialing/idealMotion";
import type { LostSightRule } from "../../../src/drill/sheet/lostSightRule";
import { describeSource, type SourceDescription } from "../../../src/realdial/sources/sourceDescription";
import { recordHash } from "../../../src/records/hashedRecord";
import { checkRecord } from "../../../src/records/sitting/checkRecord";
import { recordSchema } from "../../../src/records/sitting/recordSchema";
import { markedAgain, type SittingRecord, sittingRecord } from "../../../src/records/sitting/sittingRecord";
import { memoryShelf } from "../../support/memoryShelf";
import { VERSION } from "../../support/satRecord";
import { dialingStation, testSheet } from "../../support/testSheet";

const ENCODER = describeSource("encoder", 0.05);
const KNOB = describeSource("midi", 1.5);
const HIDDEN = describeSource("ordinary-dial", 0.06, null, false);

const plain = <Value>(value: Value): Value => JSON.parse(JSON.stringify(value));

/** A sitting of one try, turned by an encoder that lost the hand so often before it went well. */
function sat(lostSight: LostSightRule, losses: number, source: SourceDescription = ENCODER): SittingRecord {
  const station = dialingStation({ repetitions: 1, combinations: { policy: "drawn" }, lostSight });
  const sheet = testSheet({ stations: [station] });
  const session = new SittingSession(
    newProgress({ id: "one", sheet, seed: 5, person: "Tavro", personId: null }),
    memoryShelf(),
  );
  session.readInstructions();
  session.start(1000);
  let now = 2000;
  const turn = (by: number) => {
    now += 400;
    if (session.admits(source)) session.turnBy(by, now, now);
  };
  for (let k = 0; k < losses; k++) {
    turn(20);
    session.noteDoubt("sight-lost", now);
  }
  const one = session.inHand;
  if (one?.kind !== "dialing") throw new Error("no dial is in hand");
  const path = idealMotion(one.attempt.profile, one.attempt.combination, one.dial, [], 5);
  path.slice(1).forEach((position, k) => {
    turn(position - (path[k] ?? 0));
  });
  return plain(sittingRecord(session.facts(VERSION)));
}

/** What the check says of a record in which its try says something else, hash and marks made anew. */
function saidOf(record: SittingRecord, fields: object, others: object = {}): readonly string[] {
  const tries = plain(record.tries.map((one) => ({ ...one, ...fields }))) as SittingRecord["tries"];
  const forged = { ...record, tries, ...others };
  const read = recordSchema.safeParse(plain({ ...forged, marking: markedAgain(forged) }));
  if (!read.success) return ["not read"];
  const made = { ...forged, marking: markedAgain(forged) };
  const { problems } = checkRecord(made, recordHash(made), VERSION);
  return problems.map(({ code, values }) => {
    const { misfit } = values ?? {};
    return typeof misfit === "object" && misfit !== null && "code" in misfit ? String(misfit.code) : code;
  });
}

const LOST_ONCE = sat("try-again", 1);
const MARKED = sat("counts", 1);
const FAILED = sat("fails", 1);
const UNKEPT = sat("counts", 0, HIDDEN);

test.each([
  ["begun again", LOST_ONCE],
  ["marked", MARKED],
  ["not counted", FAILED],
  ["of which no motion is kept", UNKEPT],
  ["begun again as often as may be, then marked", sat("try-again", 3)],
])("a try is sound as it was made: %s", (_, record) => {
  expect(saidOf(record, {})).toEqual([]);
});

describe("what a forger writes of a hand that was lost", () => {
  test.each<[string, SittingRecord, object, string[]]>([
    ["begun again once less", LOST_ONCE, { begunAgain: undefined }, ["other-start"]],
    ["once more", LOST_ONCE, { begunAgain: 2 }, ["other-start"]],
    ["more often than may be", LOST_ONCE, { begunAgain: 3 }, ["not read"]],
    ["half a time", LOST_ONCE, { begunAgain: 0.5 }, ["not read"]],
    ["begun again where no try is", MARKED, { begunAgain: 1 }, ["begun-again-unasked"]],
    ["a doubt that the rule breaks off by", LOST_ONCE, { doubts: ["gap"] }, ["doubt-not-begun-again"]],
    ["a doubt of the hands on the screen", MARKED, { sources: undefined }, ["doubt-without-device"]],
    ["a doubt twice", MARKED, { doubts: ["gap", "gap"] }, ["doubt-twice"]],
    ["a doubt that there is not", MARKED, { doubts: ["wind"] }, ["not read"]],
    ["more doubts than there are", MARKED, { doubts: Array(9).fill("gap") }, ["not read"]],
    ["no motion kept, beside its motion", MARKED, { sources: [HIDDEN] }, ["motion-though-none"]],
    ["no motion kept of an encoder", MARKED, { sources: [{ ...ENCODER, keepsNoMotion: true }] }, ["hides-motion"]],
    ["more sources than are named", MARKED, { sources: Array(9).fill(ENCODER) }, ["not read"]],
    ["a step beyond any dial", MARKED, { sources: [{ ...ENCODER, resolution: 1e9 }] }, ["not read"]],
    ["a coarse knob called fine", MARKED, { sources: [{ ...KNOB, isCoarse: false }] }, ["coarse-unsaid"]],
  ])("is named or not read: %s", (_, record, fields, codes) => {
    expect(saidOf(record, fields)).toEqual(expect.arrayContaining(codes));
  });

  /**
   * A doubt leaves no trace but itself, and neither does what turned a dial: whoever takes one out, or names another device that
   * can be, has written of a try that can have been. So it is with an opening of which no motion was kept: a check says that it
   * was not replayed. The hash of the result alone speaks against these.
   */
  test.each<[string, SittingRecord, object]>([
    ["the doubts taken out", FAILED, { doubts: undefined }],
    ["the doubt called another", MARKED, { doubts: ["hidden"] }],
    ["another device", LOST_ONCE, { sources: [describeSource("phone", 0.03)] }],
    ["the hands on the screen", LOST_ONCE, { sources: undefined }],
    ["another noise", LOST_ONCE, { sources: [{ ...ENCODER, noise: 0 }] }],
    ["an opening of which no motion is kept", UNKEPT, { stopErrors: [0, 0, 0] }],
  ])("is not named, since it can have been: %s", (_, record, fields) => {
    expect(saidOf(record, fields)).toEqual([]);
  });
});

test("the rule of a sheet is held by the sheet's fingerprint", () => {
  const [station] = FAILED.sheet.stations;
  const sheet = { ...FAILED.sheet, stations: [{ ...station, lostSight: "counts" }] };
  expect(saidOf(FAILED, {}, { sheet })).toContain("other-fingerprint");
});
