import manifest from "../../package.json" with { type: "json" };
import { newProgress } from "../../src/app/sittings/session/sittingProgress";
import { SittingSession } from "../../src/app/sittings/session/sittingSession";
import { idealMotion } from "../../src/dialing/idealMotion";
import { type SittingRecord, sittingRecord } from "../../src/records/sitting/sittingRecord";
import { memoryShelf } from "./memoryShelf";
import { dialingStation, testSheet } from "./testSheet";

/** The version that the record is made by: this one, for only what it made itself is held to the last word. */
export const VERSION = manifest.version;
const SHEET = testSheet({
  stations: [
    dialingStation({ repetitions: 2, combinations: { policy: "drawn" }, passMarks: { firstTime: 2 } }),
    dialingStation({ id: "coded", profile: "dial-encoder", combinations: { policy: "drawn" }, repetitions: 1 }),
    dialingStation({ id: "first", upTo: 2, repetitions: 1, passMarks: { firstTime: 1 } }),
  ],
});

/** Dials the try in hand in small moves, as a browser reports them. */
function dialIt(session: SittingSession, from_ms: number, stopErrors: readonly number[]): number {
  const one = session.inHand;
  if (one?.kind !== "dialing") throw new Error("no dial is in hand");
  const path = idealMotion(one.attempt.profile, one.attempt.combination, one.dial, stopErrors, 3);
  let now = from_ms;
  path.slice(1).forEach((position, k) => {
    const from = path[k] ?? 0;
    const steps = Math.max(1, Math.round(Math.abs(position - from) / 3));
    for (let step = 0; step < steps; step++) {
      now += 17;
      session.turnBy((position - from) / steps, now, now);
    }
    now += 300;
  });
  session.endTry(now);
  session.takeNext();
  return now + 500;
}

/** How far the hand of each try stops past its numbers, graduations: the second try misses. */
const STOP_ERRORS: readonly (readonly number[])[] = [[0.25, 0, 0.25], [0, 4, 0], [0.5, 0, 0.25], []];

/**
 * A sitting by an invented hand, sat and recorded by the trainer's own code.
 *
 * @param stopErrors - of each of its four tries
 */
export function satRecord(stopErrors = STOP_ERRORS, seed = 5): SittingRecord {
  const shelf = memoryShelf();
  const fields = { id: "one", sheet: SHEET, seed, person: "Tavro", personId: null };
  const session = new SittingSession(newProgress(fields), shelf);
  session.readInstructions();
  session.start(1000);
  let now = 2000;
  for (const errors of stopErrors) now = dialIt(session, now, errors);
  return JSON.parse(JSON.stringify(sittingRecord(session.facts(VERSION))));
}
