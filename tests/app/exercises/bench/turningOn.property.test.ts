import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BenchSession } from "../../../../src/app/exercises/bench/benchSession";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { type Graduations, signOf } from "../../../../src/lock/dial";
import { SHIPPED_PROFILES } from "../../../../src/lock/shippedProfiles";
import { spinOffRule } from "../../../../src/lock/spinOffRule";
import { seededChance } from "../../../../src/statistics/chance";

/** A hand at the bench that turns in moves of a given size, or all at once. */
function handAt(bench: BenchSession, moves: Graduations) {
  let clock = 0;
  const turn = (by: Graduations) => {
    for (let left = Math.abs(by); left > 0; left -= moves) {
      clock += 20;
      bench.turnBy(Math.sign(by) * Math.min(moves, left), clock);
    }
  };
  const dial = () => {
    const { profile, combination } = bench.setup;
    for (const stop of idealMotion(profile, combination, bench.lock.dial, [], 2).slice(1)) turn(stop - bench.lock.dial);
  };
  return { turn, dial };
}

describe.each(SHIPPED_PROFILES.map((profile) => [profile.id, profile] as const))("%s", (_, profile) => {
  const { graduations, draw, procedure } = profile;
  const away = -signOf(draw.turn);
  // Where the first number is turned to in the way of the draw, turning to it brings the bolt back, if nobody has spun off.
  const least = procedure[0]?.turn === draw.turn ? spinOffRule(profile).turns * graduations + draw.travel : 0;
  const most = least + 2 * graduations * spinOffRule(profile).turns;

  test("after an opening a perfect dialing opens without a fault, however far the hand has turned on", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 4 * least, max: 4 * most }).map((quarters) => quarters / 4),
        fc.constantFrom(0.75, 3, 37, 10_000),
        fc.boolean(),
        (on, moves, turnsBack) => {
          const combination = profile.asSet ?? [];
          const setup = { profile, combination, source: "own", help: "full", dial: "usual" } as const;
          const bench = new BenchSession(setup, seededChance(5));
          const { turn, dial } = handAt(bench, moves);
          dial();
          expect(bench.state).toBe("open");
          turn(away * on);
          if (turnsBack && on > draw.travel) turn(-away * 0.5);
          dial();
          expect(bench.state).toBe("open");
          expect(bench.outcome?.opened).toBe(true);
          expect(bench.outcome?.faults).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });
});
