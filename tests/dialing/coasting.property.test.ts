import fc from "fast-check";
import { expect, test } from "vitest";
import { Attempt } from "../../src/dialing/attempt";
import { coastsTo } from "../../src/dialing/coasting";
import { exact } from "../../src/lock/exact";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";
import { parseAttemptLine, type RecordedAttempt } from "../../src/trace/recordedAttempt";
import { replay, resultOf, startOf } from "../../src/trace/replay";
import { variedAttempts } from "../support/variedAttempts";

/** Every move for itself. */
function moveByMove(recorded: RecordedAttempt): Attempt {
  const start = startOf(recorded);
  const attempt = new Attempt(recorded.profile, recorded.combination, start);
  let hand = exact(start.dial);
  recorded.positions.forEach((one, i) => {
    const position = exact(one);
    attempt.turnBy(position - hand, recorded.times_ms?.[i]);
    hand = position;
  });
  return attempt;
}

function checkSame(recorded: RecordedAttempt): void {
  const coasted = replay(recorded);
  const plain = moveByMove(recorded);
  expect(resultOf(coasted)).toEqual(resultOf(plain));
  // All that they hold is the same, but for how long a hand rested against the positive stop: a pack asks for no rest.
  if (coasted.pack === null || recorded.times_ms === undefined || !coasted.opened) expect(coasted).toEqual(plain);
}

/** A hand that goes on, turns back a little or a lot, and stops near numbers and where locks look for something. */
const step = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: 0.2, max: 30, noNaN: true }) },
  fc.constantFrom(0, 0.25, 0.5, 0.500001, 1, 1.000001, 15, 25, 100, 300, 400),
  fc.double({ min: -3, max: 3, noNaN: true }),
  fc.double({ min: -150, max: -0.1, noNaN: true }),
);
const turn = fc.tuple(fc.boolean(), fc.array(step, { minLength: 1, maxLength: 25 }));
const wait = fc.oneof(
  { weight: 8, arbitrary: fc.integer({ min: 0, max: 900 }) },
  fc.constantFrom(29_999, 30_001, 90_000),
);

const motion = fc.record({
  profile: fc.constantFrom(...SHIPPED_PROFILES),
  numbers: fc.array(fc.integer({ min: 0, max: 49 }), { minLength: 8, maxLength: 8 }),
  begin: fc.double({ min: -200, max: 200, noNaN: true }),
  turns: fc.array(turn, { minLength: 1, maxLength: 9 }),
  waits: fc.option(fc.array(wait, { minLength: 230, maxLength: 230 }), { nil: undefined }),
});

/** Where one is after each of the moves. */
function summed(begin: number, moves: readonly number[]): number[] {
  let at = begin;
  return [begin, ...moves.map((by) => (at = exact(at + by)))];
}

test("going on in one move comes to the same as move by move, for any hand", () => {
  fc.assert(
    fc.property(motion, ({ profile, numbers, begin, turns, waits }) => {
      const moves = turns.flatMap(([isLeft, steps]) => steps.map((by) => (isLeft ? by : -by)));
      const positions = summed(exact(begin), moves);
      const times_ms = waits && summed(0, waits).slice(0, positions.length);
      checkSame({ profile, combination: numbers.slice(0, profile.procedure.length), positions, times_ms });
    }),
    { numRuns: 4000 },
  );
});

test("and for hands as a school has them, which it saves most of the moves", () => {
  let moves = 0;
  let made = 0;
  for (const line of variedAttempts(1500, 3)) {
    let recorded: RecordedAttempt;
    try {
      recorded = parseAttemptLine(line);
    } catch {
      continue;
    }
    checkSame(recorded);
    moves += recorded.positions.length;
    made += movesMade(recorded);
  }
  expect(made / moves).toBeLessThan(0.5);
});

function movesMade(recorded: RecordedAttempt): number {
  const start = startOf(recorded);
  const attempt = new Attempt(recorded.profile, recorded.combination, start);
  const { positions, times_ms } = recorded;
  let hand = exact(start.dial);
  let made = 0;
  for (let i = 0; i < positions.length; i++) {
    i = coastsTo(attempt, hand, positions, i, positions.length, times_ms !== undefined);
    const position = exact(positions[i] ?? hand);
    attempt.turnBy(position - hand, times_ms?.[i]);
    hand = position;
    made += 1;
  }
  return made;
}
