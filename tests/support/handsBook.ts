import { demoLogbook } from "../../src/progress/demo/demoLogbook";
import { describeSource, type SourceDescription } from "../../src/realdial/sources/sourceDescription";
import type { AttemptRecord } from "../../src/records/attemptRecord";
import { writeLogbookFile } from "../../src/records/file/logbookFile";
import { anAttempt, aPerson, contents, NOON, stopsOf } from "./logbookRecords";

/** A printed dial before a camera. */
const PRINTED = describeSource("printed-dial", 0.06, 0.013);
const ENCODER = describeSource("encoder", 100 / 2400, 0.012);
const KNOB = describeSource("midi", 1.5625, 0.451);
const HOUR = 3_600_000;

/** Tries of one hand, the first in an hour of its own: how far off the worst stop of each was, and null for a miss. */
const triesOf = (
  name: string,
  hour: number,
  worst: readonly (number | null)[],
  sources?: readonly SourceDescription[],
): AttemptRecord[] =>
  worst.map((error, k) =>
    anAttempt(`${name}${k}`, {
      ...{ startedAt: NOON + hour * HOUR + k * 90_000, duration_ms: 30_000 + 700 * k, opened: error !== null },
      stops: stopsOf(error ?? 2.5, -0.1, 0.2),
      ...(sources && { sources: [...sources] }),
    }),
  );

/** A logbook as a file: Tavro opens well on the screen, less well a printed dial, twice an encoder, and turns a coarse knob. */
export const handsBook = (): string =>
  writeLogbookFile(
    contents(
      [aPerson("tavro", { name: "Tavro" })],
      [
        ...triesOf("knob", 0, [1.5, 1.5, null, 1.5], [KNOB]),
        ...triesOf("encoder", 2, [0.5], [ENCODER]),
        ...triesOf("printed", 4, [1.1, null, 0.9, 1.2, null, 1, 0.8, 1.1], [PRINTED]),
        ...triesOf("screen", 8, [0.3, 0.2, 0.4, 0.3, null, 0.2, 0.3, 0.1, 0.2, 0.3, 0.2, 0.2, 0.1, 0.2, 0.3]),
      ],
    ),
    NOON,
  );

/** The demo class as a file, some of whose attempts were turned by a printed dial: recordings and all. */
export function handsClass(): string {
  const { records, traces } = demoLogbook(7, NOON);
  const attempts = records.attempts.map((one, k) => (k % 3 === 0 ? { ...one, sources: [PRINTED] } : one));
  return writeLogbookFile({ records: { ...records, attempts }, traces }, NOON);
}
