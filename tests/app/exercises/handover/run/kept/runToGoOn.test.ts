import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { runToGoOn } from "../../../../../../src/app/exercises/handover/run/kept/runToGoOn";
import { HandoverSession } from "../../../../../../src/app/exercises/handover/run/session/handoverSession";
import type { KeptRun } from "../../../../../../src/app/exercises/handover/run/session/keptRun";
import { type MarkedRun, readKept, writeKept } from "../../../../../../src/app/exercises/handover/run/session/keptRun";
import { shippedProfile } from "../../../../../../src/lock/shippedProfiles";

const SETUP = { profile: shippedProfile("three-wheel"), seed: 7, isHandsOff: true };

/** A handover after some acts. */
function keptAfter(acts: number): KeptRun {
  let last: KeptRun | null = null;
  const session = new HandoverSession(SETUP, null, (kept) => {
    last = structuredClone(kept);
  });
  session.keepNow();
  for (let k = 0; k < acts; k++) session.act({ type: "lock.spunOff" }, k);
  if (last === null) throw new Error("it was not kept");
  return last;
}

const marked = (id: string, startedAt: number, count: number, acts: number): MarkedRun => ({
  kept: keptAfter(acts),
  mark: { id, startedAt, count },
});
const row = ({ kept, mark }: MarkedRun, isRunning = true) => ({
  id: mark.id,
  isRunning,
  body: JSON.parse(JSON.stringify(writeKept(kept, mark))) as unknown,
});
const any = () => true;
const stepsOf = (run: MarkedRun | null) => run?.kept.run.events.length;

beforeEach(() => void vi.stubGlobal("localStorage", { getItem: () => null, setItem: () => undefined }));
afterEach(() => void vi.unstubAllGlobals());

describe("which handover goes on", () => {
  test("of text and database, the one kept more often", () => {
    const [early, late] = [marked("a", 1, 2, 1), marked("a", 1, 5, 4)];
    expect(stepsOf(runToGoOn(early, [row(late)], any))).toBe(4);
    expect(stepsOf(runToGoOn(late, [row(early)], any))).toBe(4);
  });

  test("the text alone where the database does not have it, the database alone where there is no text", () => {
    expect(stepsOf(runToGoOn(marked("a", 1, 5, 3), [], any))).toBe(3);
    expect(stepsOf(runToGoOn(null, [row(marked("a", 1, 5, 3))], any))).toBe(3);
    expect(runToGoOn(null, [], any)).toBeNull();
  });

  test("one that was discarded does not come back from a text that was left of it", () => {
    const old = marked("a", 1, 9, 5);
    const gone = { id: "a", isRunning: false, body: null };
    expect(runToGoOn(old, [gone], any)).toBeNull();
    expect(stepsOf(runToGoOn(old, [gone, row(marked("b", 2, 1, 0))], any))).toBe(0);
  });

  test("one that has ended is shown as it ended, whatever a text still says", () => {
    const found = runToGoOn(marked("a", 1, 99, 2), [row(marked("a", 1, 5, 4), false)], any);
    expect(stepsOf(found)).toBe(4);
  });

  test("of several, the one begun last, unless the address asks for another", () => {
    const rows = [row(marked("a", 1, 50, 3)), row(marked("b", 2, 1, 1))];
    expect(runToGoOn(null, rows, any)?.mark.id).toBe("b");
    expect(runToGoOn(null, rows, ({ mark }) => mark.id === "a")?.mark.id).toBe("a");
  });

  test("what cannot be read is passed over, and the rest goes on", () => {
    const rows = [{ id: "x", isRunning: true, body: { version: 1, run: "nonsense" } }, row(marked("b", 2, 1, 1))];
    expect(runToGoOn(null, rows, any)?.mark.id).toBe("b");
    expect(readKept("nonsense").unread).toBe("run");
  });
});
