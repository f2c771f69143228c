import { describe, expect, test } from "vitest";
import { TroubleTry } from "../../../../src/app/sittings/tries/troubleTry";
import type { TroubleStation } from "../../../../src/drill/sheet/sheet";
import type { Observation } from "../../../../src/handover/trouble/observation";
import { diagnose, type Instruments } from "../../../support/diagnostician";
import { troubleStation } from "../../../support/testSheet";
import { setupOf } from "../jobTries";

/** A try whose exercise tells it of every look, a second apart. */
function inHand(station: TroubleStation, seed = 5) {
  const one = new TroubleTry(setupOf(station, seed));
  const { session } = one;
  let now = 0;
  session.subscribe(() => one.worked(now));
  const seen = <Seen extends Observation>(look: (at: number) => void) => {
    now += 1000;
    look(now);
    return session.lastSeen as Seen;
  };
  const instruments: Instruments = {
    dial: (off, rest_s = 0) => seen((at) => session.dial(off, rest_s, at)),
    readCam: (turn) => seen((at) => session.readCam(turn, at)),
    pull: (turn) => seen((at) => session.pull(turn, at)),
    turnRound: () => seen((at) => session.turnRound(at)),
    pushPull: () => seen((at) => session.pushPull(at)),
    readMarks: () => seen((at) => session.readMarks(at)),
    holdAgainstRules: () => seen((at) => session.holdAgainstRules(at)),
  };
  return { one, session, instruments };
}

describe("a try at finding trouble", () => {
  test("named by the instruments: right, with its size and what was looked at", () => {
    const { one, session, instruments } = inHand(troubleStation({ pool: ["index-slipped"] }));
    session.name(diagnose(session.task.card, instruments), 90_000);
    one.end();
    const result = one.result();
    expect(result).toMatchObject({ condition: "index-slipped", named: "index-slipped", isNamedRight: true, tries: 0 });
    expect(Math.abs(result.sizeError ?? 9)).toBeLessThan(0.3);
    expect(result.measurements).toBe(session.bench.log.length);
    expect(session.state).toBe("named");
    expect(session.result).toBeNull();
  });

  test("a lucky guess is not right, and its size counts for nothing", () => {
    const { one, session } = inHand(troubleStation({ pool: ["index-slipped"] }));
    session.name(session.task.trouble, 5000);
    one.end();
    expect(one.result()).toMatchObject({ named: "index-slipped", isNamedRight: false, sizeError: null });
  });

  test("a size in seconds is no error in graduations", () => {
    const station = troubleStation({ profile: "dial-encoder", pool: ["pause-short"] });
    const { one, session, instruments } = inHand(station);
    session.name(diagnose(session.task.card, instruments), 90_000);
    one.end();
    expect(one.result()).toMatchObject({ condition: "pause-short", isNamedRight: true, sizeError: null });
  });

  test("nothing named is not found", () => {
    const { one, session } = inHand(troubleStation());
    session.pull("left", 1000);
    one.end();
    expect(one.result()).toMatchObject({ named: null, isNamedRight: false, sizeError: null, measurements: 1 });
  });

  test("draws from the pool of its station alone, the same for the same seed", () => {
    const pool = ["gates-tight", "dial-heavy"];
    const tasks = (seed: number) =>
      Array.from({ length: 8 }, (_, index) => {
        const setup = setupOf(troubleStation({ pool, repetitions: 8 }), seed, index);
        return new TroubleTry(setup).session.task.trouble;
      });
    expect(tasks(3)).toEqual(tasks(3));
    expect(tasks(4)).not.toEqual(tasks(3));
    expect(new Set(tasks(3).map(({ kind }) => kind))).toEqual(new Set(pool));
  });
});
