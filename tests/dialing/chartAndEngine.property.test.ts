import fc from "fast-check";
import { expect, test } from "vitest";
import { createActor } from "xstate";
import { Attempt } from "../../src/dialing/attempt";
import type { DialingFact } from "../../src/dialing/dialingFact";
import { type DialingState, dialingMachine } from "../../src/dialing/dialingMachine";
import { idealMotion } from "../../src/dialing/idealMotion";
import { placeOf } from "../../src/dialing/leg";
import type { Graduations } from "../../src/lock/dial";
import type { Profile } from "../../src/lock/profile";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";

const exact = (from: number, to: number) => fc.integer({ min: from * 64, max: to * 64 }).map((n) => n / 64);

/** A piece of a hand's work: one move, or a whole combination dialed with stops that are off. */
type Piece = { readonly by: Graduations } | { readonly errors: readonly Graduations[] };
const piece: fc.Arbitrary<Piece> = fc.oneof(
  { weight: 3, arbitrary: exact(-420, 420).map((by) => ({ by })) },
  { weight: 3, arbitrary: exact(-30, 30).map((by) => ({ by })) },
  { weight: 3, arbitrary: fc.constantFrom(300, 400, -300, -400, 20, -20).map((by) => ({ by })) },
  { weight: 4, arbitrary: fc.array(exact(-2, 2), { maxLength: 4 }).map((errors) => ({ errors })) },
);

function movesOf(one: Piece, { profile, combination, dial }: Attempt): Graduations[] {
  if ("by" in one) return [one.by];
  const path = idealMotion(profile, combination, dial, one.errors, 5);
  return path.slice(1).map((position, i) => position - (path[i] ?? position));
}

/** What the engine itself says of a leg under way, in the words of the chart. */
function engineSays({ reader }: Attempt): { step: number | undefined; value: DialingState | undefined } {
  const { leg } = reader;
  const target = leg && reader.targetOf(leg);
  const VALUES = { before: "turning", at: "resting", past: "overrun" } as const;
  return { step: leg?.step, value: leg && target && VALUES[placeOf(leg, target)] };
}

/** A lock, its chart, and a hand at both. */
function bench(profile: Profile) {
  const attempt = new Attempt(profile, profile.asSet ?? [], { dial: 0 });
  const chart = createActor(dialingMachine(profile)).start();
  const hear = (fact: DialingFact) => {
    const before = chart.getSnapshot();
    if (fact.type === "turn.resumed" && before.can(fact)) expect(fact.place).toBe(before.context.leftAt);
    if (fact.type === "fresh.started") expect(before.can(fact), `fresh start while ${before.value}`).toBe(true);
    chart.send(fact);
  };
  const check = () => {
    const { value, context } = chart.getSnapshot();
    const isDialing = value === "turning" || value === "resting" || value === "overrun";
    if (isDialing) expect(engineSays(attempt)).toEqual({ step: context.number, value });
    expect(["open", "thrown", "secured"].includes(value)).toBe(attempt.opened);
  };
  return { attempt, hear, check };
}

test.each(SHIPPED_PROFILES.map((profile) => [profile.id, profile] as const))(
  "whatever a hand does, chart and engine agree on the number and on where the dial is, on the %s lock",
  (_, profile) => {
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
        const { attempt, hear, check } = bench(profile);
        for (const one of pieces) {
          for (const by of movesOf(one, attempt)) {
            attempt.turnBy(by).forEach(hear);
            check();
          }
        }
      }),
      { numRuns: 400 },
    );
  },
);
