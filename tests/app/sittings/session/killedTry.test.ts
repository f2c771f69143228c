import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { newProgress } from "../../../../src/app/sittings/session/sittingProgress";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { describeSource, type SourceDescription } from "../../../../src/realdial/sources/sourceDescription";
import type { AttemptRecord } from "../../../../src/records/attemptRecord";
import { allAttempts, motionOf } from "../../../../src/store/attemptQueries";
import type { Logbook } from "../../../../src/store/logbook";
import { aPerson, emptyHost, NOON } from "../../../support/logbookRecords";
import { memoryShelf } from "../../../support/memoryShelf";
import { dialingStation, testSheet } from "../../../support/testSheet";

let Session: typeof import("../../../../src/app/sittings/session/sittingSession")["SittingSession"];
let kept: typeof import("../../../../src/app/sittings/session/sittingKeeping");
let keeping: typeof import("../../../../src/app/keeping/keeping")["keeping"];
let logbook: Logbook;

beforeAll(async () => {
  for (const [name, value] of Object.entries(emptyHost())) vi.stubGlobal(name, value);
  // A page opens its logbook once: this one has a page of its own.
  vi.resetModules();
  ({ SittingSession: Session } = await import("../../../../src/app/sittings/session/sittingSession"));
  kept = await import("../../../../src/app/sittings/session/sittingKeeping");
  ({ keeping } = await import("../../../../src/app/keeping/keeping"));
  const { currentLogbook } = await import("../../../../src/app/keeping/currentLogbook");
  ({ logbook } = await currentLogbook());
  await logbook.save({ kind: "people", record: aPerson("tavro") });
});
afterAll(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

const UNKEPT = describeSource("ordinary-dial", 0.06, null, false);
const KEPT = describeSource("ordinary-dial", 0.06, null, true);

const SHEET = testSheet({
  stations: [dialingStation({ repetitions: 2 })],
  sitting: { pauseAllowed: true, onReload: "resume", clockHideable: true },
});

let sittings = 0;

/** What a try came to, as it is on record: ids and moments are the page's. */
const cameTo = ({
  createdAt: _c,
  updatedAt: _u,
  revision: _r,
  startedAt: _s,
  id: _i,
  sittingId: _t,
  ...rest
}: AttemptRecord) => rest;

/**
 * Sits one try, its dial turned by a source. A page that is killed has it on its shelf, and the logbook nothing of it; the page
 * after that makes good what is missing.
 *
 * @returns the try as it is on record, and its motion
 */
async function recordOfTry(source: SourceDescription, isKilled: boolean, more = (_texts: Map<string, string>) => {}) {
  sittings += 1;
  const id = `sitting-${sittings}`;
  const texts = new Map<string, string>();
  const progress = newProgress({ id, sheet: SHEET, seed: 5, person: "tavro", personId: "tavro" });
  const writer = new kept.SittingKeeping(progress);
  const session = new Session(progress, memoryShelf(texts), (now, ended) => {
    if (!isKilled) writer.note(now, ended, NOON);
  });
  session.readInstructions();
  session.start(NOON);
  const one = session.inHand;
  if (one?.kind !== "dialing") throw new Error("no dial is in hand");
  idealMotion(one.attempt.profile, one.attempt.combination, one.dial, [], 5).reduce((from, to, k) => {
    if (session.admits(source)) session.turnBy(to - from, k * 1000, NOON + k * 1000);
    return to;
  });
  expect(session.results).toHaveLength(1);
  more(texts);
  if (isKilled) {
    const shelf = memoryShelf(texts);
    const found = shelf.progress;
    if (found === null) throw new Error("the sitting is not on the shelf");
    new kept.SittingKeeping(found).noteMissing(new Session(found, shelf), shelf, NOON);
  }
  await keeping.add(async () => {});

  const record = (await allAttempts(logbook, { personId: "tavro" })).find(({ sittingId }) => sittingId === id);
  return { record, motion: record && (await motionOf(logbook, record.id)) };
}

test.each([
  ["whose motion may be kept", KEPT, true],
  ["whose motion may not be kept", UNKEPT, false],
])(
  "a try %s is on record after a kill before the logbook had it, as it would have been",
  async (_, source, hasMotion) => {
    const whole = await recordOfTry(source, false);
    const after = await recordOfTry(source, true);
    if (whole.record === undefined || after.record === undefined) throw new Error("the try is not on record");
    expect(after.record).toMatchObject({ opened: true, sources: [source] });
    expect(cameTo(after.record)).toEqual(cameTo(whole.record));
    expect([whole.motion === undefined, after.motion === undefined]).toEqual([!hasMotion, !hasMotion]);
  },
);

test.each(["", "{", "{}", '{"opened": 1}', '{"opened": true, "faults": [], "stops": [{}]}'])(
  "what is kept of a try and cannot be read is passed over, and the try is not on record: %s",
  async (text) => {
    const { record } = await recordOfTry(UNKEPT, true, (texts) => {
      for (const key of texts.keys()) if (key.startsWith("gatefall.sitting.outcome.")) texts.set(key, text);
    });
    expect(record).toBeUndefined();
  },
);

test("a sitting that is put away leaves nothing of its tries", async () => {
  const texts = new Map<string, string>();
  await recordOfTry(UNKEPT, true, (own) => {
    for (const [key, text] of own) texts.set(key, text);
  });
  expect([...texts.keys()].some((key) => key.startsWith("gatefall.sitting.outcome."))).toBe(true);
  memoryShelf(texts).clear(2);
  expect([...texts.keys()].filter((key) => key.startsWith("gatefall.sitting."))).toEqual([]);
});
