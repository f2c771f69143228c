import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { handMotion } from "../../src/progress/demo/handMotion";
import { readLogbookFile, writeLogbookFile } from "../../src/records/file/logbookFile";
import { NO_CONTENTS } from "../../src/records/logbookContents";
import { decodeTrace, encodeTrace } from "../../src/records/motion/traceCodec";
import { seededChance } from "../../src/statistics/chance";
import { attemptPage, countAttempts } from "../../src/store/attemptQueries";
import { Logbook } from "../../src/store/logbook";
import { LogbookDatabase } from "../../src/store/logbookDatabase";
import { mergeIntoLogbook } from "../../src/store/wholeLogbook";
import { writeAttemptLine } from "../../src/trace/recordedAttempt";
import { anAttempt, aPerson, NOON } from "../support/logbookRecords";

/** Bytes of a kept attempt, and times of a full logbook in a database that lives in memory; a browser is measured apart. */

const print = (text: string) => process.stdout.write(`${text}\n`);
const ATTEMPTS = 50_000;
const PEOPLE = 5;
const BATCH = 5000;
const PAGE = 50;
const ROUNDS = 5;

const profile = shippedProfile("three-wheel");
const chance = seededChance(1989);
const combination = [29, 92, 54];
const start = { dial: 12, slack: [0, 0, 0] };
const motion = { start, ...handMotion(profile, combination, 12, { stopErrors: [0.2, -0.4, 0.1], speed: 21 }, chance) };

/** A jittering hand: every move of a mouse a little off, as a real one is. */
const jittered = { ...motion, positions: motion.positions.map((at) => at + 0.25 * (chance() - 0.5)) };

function time<Answer>(act: () => Answer): readonly [number, Answer] {
  const begin = performance.now();
  const answer = act();
  return [performance.now() - begin, answer];
}

async function timed<Answer>(act: () => Promise<Answer>): Promise<readonly [number, Answer]> {
  const begin = performance.now();
  const answer = await act();
  return [performance.now() - begin, answer];
}

function reportTrace(name: string, recorded: typeof motion): Uint8Array {
  const [encoding, trace] = time(() => encodeTrace(recorded));
  const [decoding] = time(() => decodeTrace(trace));
  const line = writeAttemptLine({ profile, combination, ...recorded }, profile.id).length;
  const seconds = ((recorded.times_ms.at(-1) ?? 0) / 1000).toFixed(1);
  print(`${name}: ${recorded.positions.length} moves in ${seconds} s`);
  print(
    `  packed ${trace.length} B, as replay line ${line} B; pack ${encoding.toFixed(1)} ms, unpack ${decoding.toFixed(1)} ms`,
  );
  return trace;
}

reportTrace("smooth hand", motion);
const trace = reportTrace("jittering hand", jittered);
const record = JSON.stringify(anAttempt("11111111-2222-4333-8444-555555555555")).length;
print(`record without its motion: ${record} B as JSON; one attempt in all about ${record + trace.length} B`);

const host = { indexedDB: new IDBFactory(), IDBKeyRange };
const people = Array.from({ length: PEOPLE }, (_, i) => aPerson(`p${i}`));
const writing = new Logbook(new LogbookDatabase("bench", host));
await writing.open();
const [inserting] = await timed(async () => {
  for (let from = 0; from < ATTEMPTS; from += BATCH) {
    const attempts = Array.from({ length: BATCH }, (_, k) => {
      const i = from + k;
      return anAttempt(`a${i}`, { personId: `p${i % PEOPLE}`, startedAt: NOON + 1000 * i, opened: i % 7 !== 0 });
    });
    const traces = new Map(attempts.map(({ id }) => [id, trace]));
    await mergeIntoLogbook(writing, { records: { ...NO_CONTENTS.records, people, attempts }, traces });
  }
});
writing.close();
print(`inserting ${ATTEMPTS} attempts with traces: ${(inserting / 1000).toFixed(1)} s`);

const part = Array.from({ length: BATCH }, (_, i) => anAttempt(`a${i}`, { personId: "p0" }));
const some = {
  records: { ...NO_CONTENTS.records, people, attempts: part },
  traces: new Map(part.map(({ id }) => [id, trace])),
};
const [fileWriting, file] = time(() => writeLogbookFile(some, NOON));
const [fileReading] = time(() => readLogbookFile(file));
print(
  `file of ${BATCH} attempts: ${(file.length / 1e6).toFixed(1)} MB; write ${fileWriting.toFixed(0)} ms, read and check ${fileReading.toFixed(0)} ms`,
);

const openings: number[] = [];
for (let round = 0; round < ROUNDS; round++) {
  const [opening] = await timed(async () => {
    const logbook = new Logbook(new LogbookDatabase("bench", host));
    await logbook.open();
    await attemptPage(logbook, { personId: "p3" }, PAGE);
    await countAttempts(logbook, { personId: "p3" });
    logbook.close();
  });
  openings.push(opening);
}
print(`open, latest ${PAGE} of one person, and the count: ${openings.map((ms) => ms.toFixed(0)).join(", ")} ms`);
