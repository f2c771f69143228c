import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import fc from "fast-check";
import type { AttemptRecord, StopRecord } from "../../src/records/attemptRecord";
import type { JobRecord } from "../../src/records/jobRecord";
import { type LogbookContents, NO_CONTENTS } from "../../src/records/logbookContents";
import { encodeTrace } from "../../src/records/motion/traceCodec";
import type { PersonRecord } from "../../src/records/records";
import { Logbook } from "../../src/store/logbook";
import { type DatabaseHost, LogbookDatabase } from "../../src/store/logbookDatabase";

/** A morning in November 2026. */
export const NOON = 1_795_000_000_000;

/** Somebody who has joined a class at a bench. */
export const JOINED_ADA = {
  id: "ada",
  name: "Ada",
  school: { id: "s", name: "Millbrook" },
  class: { id: "c", name: "Fitters 1" },
  deviceId: "d",
  joinedAt: NOON,
};

/** A browser's database with nothing in it. */
export const emptyHost = (): DatabaseHost => ({ indexedDB: new IDBFactory(), IDBKeyRange });

/** An open logbook in a database of its own. */
export async function openLogbook(host = emptyHost()): Promise<Logbook> {
  const logbook = new Logbook(new LogbookDatabase("test", host));
  await logbook.open();
  return logbook;
}

/** A trace of three positions. */
export const SHORT_TRACE = encodeTrace({ start: { dial: 12.5 }, positions: [12.5, 20, 31.25], times_ms: [0, 16, 33] });

/** Stops with given errors, at places 1, 2, 3 and so on. */
export const stopsOf = (...errors: number[]): StopRecord[] =>
  errors.map((error, k) => ({
    step: k + 1,
    turn: k % 2 === 0 ? "left" : "right",
    number: 10 + 20 * k,
    error,
    amplitude: 300,
    time_ms: 4000,
  }));

/** A person named by the id. */
export const aPerson = (id: string, other: Partial<PersonRecord> = {}): PersonRecord => ({
  id,
  createdAt: NOON,
  updatedAt: NOON,
  name: id,
  part: "trainee",
  ...other,
});

/** An attempt that opened, unless told otherwise. */
export const anAttempt = (id: string, other: Partial<AttemptRecord> = {}): AttemptRecord => ({
  id,
  createdAt: NOON,
  updatedAt: NOON,
  personId: "tavro",
  startedAt: NOON,
  duration_ms: 40_000,
  profileId: "three-wheel",
  exercise: "open",
  combination: [29, 92, 54],
  help: "silent",
  conditions: [],
  tags: [],
  opened: true,
  faults: [],
  stops: stopsOf(0.25, -0.5, 0),
  ...other,
});

/** A change that was right, unless told otherwise. */
export const aJob = (id: string, other: Partial<JobRecord> = {}): JobRecord => ({
  id,
  createdAt: NOON,
  updatedAt: NOON,
  personId: "tavro",
  startedAt: NOON,
  duration_ms: 240_000,
  kind: "change",
  profileId: "three-wheel",
  help: "silent",
  isRight: true,
  missed: [],
  tags: [],
  ...other,
});

/** A logbook of people and attempts, each attempt with a short trace. */
export const contents = (
  people: readonly PersonRecord[],
  attempts: readonly AttemptRecord[] = [],
): LogbookContents => ({
  records: { ...NO_CONTENTS.records, people, attempts },
  traces: new Map(attempts.map(({ id }) => [id, SHORT_TRACE])),
});

const PEOPLE = ["tavro", "mibsy", "dorvik"];

/** Attempts with ids of their own, of three people at two locks, often at the same moment. */
export const attempts = fc
  .array(
    fc.record({
      personId: fc.constantFrom(...PEOPLE),
      profileId: fc.constantFrom("three-wheel", "dial-encoder"),
      startedAt: fc.integer({ min: 0, max: 8 }).map((minutes) => NOON + 60_000 * minutes),
      opened: fc.boolean(),
      help: fc.constantFrom("full" as const, "silent" as const),
    }),
    { maxLength: 30 },
  )
  .map((list) => list.map((one, i) => anAttempt(`a${i}`, one)));

/** The people whom `attempts` are of. */
export const theirPeople = PEOPLE.map((id) => aPerson(id));
