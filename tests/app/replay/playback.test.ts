import { expect, test } from "vitest";
import { BenchSession } from "../../../src/app/exercises/bench/benchSession";
import { Playback } from "../../../src/app/replay/playback";
import { DIAL_WEIGHTS } from "../../../src/dialing/hand/dialFeel";
import { idealMotion } from "../../../src/dialing/idealMotion";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { seededChance } from "../../../src/statistics/chance";

const COMBINATION = [38, 71, 26];

test.each(["three-wheel", "dial-encoder"])(
  "a playback of the %s lock is at every moment where the bench was, forward and back",
  (id) => {
    for (const dial of DIAL_WEIGHTS) {
      const profile = shippedProfile(id);
      const setup = { profile, source: "own", combination: COMBINATION, help: "full", dial } as const;
      const bench = new BenchSession(setup, seededChance(4));
      const path = idealMotion(profile, COMBINATION, bench.dial, [], 5);
      const was: { at: number; state: string; dial: number }[] = [];
      path.slice(1).forEach((position, k) => {
        bench.turnBy(position - (path[k] ?? position), 1000 * (k + 1));
        bench.runOn(1000 * (k + 1) + 800);
        bench.rest(1000 * (k + 1) + 900);
        was.push({ at: bench.recording.times_ms.at(-1) ?? 0, state: bench.state, dial: bench.attempt.dial });
      });
      const playback = new Playback(profile, COMBINATION, bench.recording);
      for (const { at, state, dial } of [...was, ...was.toReversed()]) {
        playback.goTo(at);
        expect({ state: playback.state, dial: playback.attempt.dial }).toEqual({ state, dial });
      }
    }
  },
);
