import { describe, expect, test } from "vitest";
import { type ReaderMessage, readAndTell } from "../../../src/app/keeping/reader/readerMessages";
import { describeSource } from "../../../src/realdial/sources/sourceDescription";
import { SCREEN_SOURCE } from "../../../src/realdial/sources/sourcesSeen";
import { readLogbookFile, writeLogbookFile } from "../../../src/records/file/logbookFile";
import { replayedLogbook } from "../../../src/records/file/replayedAttempts";
import { fileSentences } from "../../../src/records/fileWords";
import { JOB_KINDS } from "../../../src/records/jobRecord";
import { encodeTrace } from "../../../src/records/motion/traceCodec";
import { aJob, anAttempt, aPerson, contents, NOON } from "../../support/logbookRecords";

const ENCODER = describeSource("encoder", 100 / 2400, 0.012);
const HIDDEN = describeSource("ordinary-dial", 0.06, null, false);

const PLAIN = contents([aPerson("tavro")]);
const zeroing = {
  ...{ id: "one", createdAt: NOON, updatedAt: NOON, personId: "tavro", startedAt: NOON },
  ...{ profileId: "dial-encoder", outcome: "zero-set", readings: [] },
};
const declaration = {
  ...{ id: "one", createdAt: NOON, updatedAt: NOON, personId: "tavro", declaredAt: NOON },
  ...{ profileId: "three-wheel", exercise: "open", attempts: 12 },
};
const KINDS: readonly (readonly [name: string, list: string, record: object])[] = [
  ["a zeroing", "zeroings", zeroing],
  ["a skill shown", "declarations", declaration],
  ...JOB_KINDS.map((kind) => [`a job: ${kind}`, "jobs", aJob("one", { kind })] as const),
];

/** What is said of a file with one such record, and how many it was taken for. */
function saidOf(list: string, record: object) {
  const file = { ...JSON.parse(writeLogbookFile(PLAIN, NOON)), version: 2, [list]: [record] };
  const { records, remarks } = readLogbookFile(JSON.stringify(file));
  const taken = Object.entries(records).find(([kind]) => kind === list)?.[1] ?? [];
  return { said: fileSentences(remarks), taken: taken.length };
}

describe.each(KINDS)("%s", (_, list, record) => {
  test("is not named where its device can have turned it", () => {
    expect(saidOf(list, record)).toEqual({ said: [], taken: 1 });
    expect(saidOf(list, { ...record, sources: [SCREEN_SOURCE, ENCODER] })).toEqual({ said: [], taken: 1 });
  });

  test.each<[string, object, string]>([
    ["none", { sources: [] }, "lists what turned the dial, but the list is empty"],
    [
      "the screen alone",
      { sources: [SCREEN_SOURCE] },
      "lists the screen alone as what turned the dial, which no record does",
    ],
    ["one device twice", { sources: [ENCODER, ENCODER] }, "lists the same source of turning twice"],
    [
      "a step of another kind",
      { sources: [describeSource("printed-dial", 1)] },
      "names a source with steps that no such device has",
    ],
    [
      "too much noise",
      { sources: [{ ...ENCODER, noise: 9 }] },
      "names a source that is noisier at rest than a rest can be",
    ],
    [
      "a coarse step called fine",
      { sources: [{ ...describeSource("midi", 2), isCoarse: false }] },
      "names a source with steps of half a graduation or more, but does not call it coarse",
    ],
    [
      "no motion kept of an encoder",
      { sources: [{ ...ENCODER, keepsNoMotion: true }] },
      "says that no motion was kept of a source that gives no such choice",
    ],
    ...(list === "declarations"
      ? []
      : [
          [
            "a doubt of the hands on the screen",
            { doubts: ["gap"] },
            "has turns in doubt, but no device turned its dial",
          ] satisfies [string, object, string],
        ]),
  ])("is named and taken as recorded: %s", (_what, fields, words) => {
    const said = [`${list}[0] (id one) ${words}: taken as recorded.`];
    expect(saidOf(list, { ...record, ...fields })).toEqual({ said, taken: 1 });
  });

  test("is not named, since it can have been: another device, or none", () => {
    expect(saidOf(list, { ...record, sources: [describeSource("phone", 0.03)] }).said).toEqual([]);
    expect(saidOf(list, { ...record, sources: undefined }).said).toEqual([]);
    expect(saidOf(list, { ...record, sources: [{ ...ENCODER, noise: 0 }] }).said).toEqual([]);
  });
});

describe("an attempt", () => {
  const trace = encodeTrace({ positions: [0, 10], times_ms: [0, 100] });
  const fileOf = (fields: object) =>
    writeLogbookFile(
      { ...contents([aPerson("tavro")], [anAttempt("a", fields)]), traces: new Map([["a", trace]]) },
      NOON,
    );

  test("of which no motion is kept is taken without the one that comes with it, and that is said", () => {
    const { records, traces, remarks } = readLogbookFile(fileOf({ sources: [HIDDEN] }));
    expect([records.attempts.length, traces.size]).toEqual([1, 0]);
    expect(fileSentences(remarks)).toEqual([
      "attempts[0] (id a) is taken without its motion. Its record says that none is kept.",
    ]);
  });

  test("whose motion may be kept has it", () => {
    const { traces, remarks } = readLogbookFile(fileOf({ sources: [ENCODER] }));
    expect([traces.size, remarks]).toEqual([1, []]);
  });

  test.each<[string, object, string]>([
    ["none", { sources: [] }, "lists what turned the dial, but the list is empty"],
    [
      "a step of another kind",
      { sources: [describeSource("printed-dial", 1)] },
      "names a source with steps that no such device has",
    ],
    ["a doubt of the hands on the screen", { doubts: ["gap"] }, "has turns in doubt, but no device turned its dial"],
    ["one doubt twice", { sources: [ENCODER], doubts: ["gap", "gap"] }, "gives the same doubt of its turns twice"],
  ])("is named where it is not replayed, and taken as recorded: %s", (_what, fields, words) => {
    const { records, remarks } = readLogbookFile(fileOf(fields));
    expect(fileSentences(remarks)).toEqual([`attempts[0] (id a) ${words}: taken as recorded.`]);
    expect(records.attempts).toHaveLength(1);
  });

  test("with doubts and no device is left out when it is replayed, and named once", async () => {
    const read = readLogbookFile(fileOf({ doubts: ["gap"] }), undefined, true);
    expect(read.remarks).toEqual([]);
    const left = [expect.stringContaining("what they say turned the dial cannot have been")];
    expect(fileSentences(replayedLogbook(read).leftOut)).toEqual(left);

    const told: ReaderMessage[] = [];
    await readAndTell({ replayed: new Blob([fileOf({ doubts: ["gap"] })]) }, (message) => told.push(message));
    expect(told.flatMap((one) => (one.kind === "read" ? fileSentences(one.leftOut) : []))).toEqual(left);
  });
});
