import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createActor } from "xstate";
import { type DialingEvent, dialingMachine, stateInWords } from "../../src/dialing/dialingMachine";
import { SHIPPED_PROFILES, shippedProfile } from "../../src/lock/shippedProfiles";
import type { ChartState } from "../support/handPlanner";

const simple = ["fresh.started", "number.reached", "number.passed", "turn.reversed", "draw.refused"] as const;
const later = ["bolt.retracted", "bolt.thrown", "lock.cleared", "pause.exceeded", "attempt.restarted"] as const;
const event: fc.Arbitrary<DialingEvent> = fc.oneof(
  { weight: 10, arbitrary: fc.constantFrom(...simple, ...later).map((type): DialingEvent => ({ type })) },
  {
    weight: 2,
    arbitrary: fc.constantFrom("left", "right").map((turn): DialingEvent => ({ type: "run.begun", turn })),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom("before", "at", "past").map((place): DialingEvent => ({ type: "turn.resumed", place })),
  },
);

/** Every state that a sequence of events leads through, the first one included. */
function statesOf(profile: (typeof SHIPPED_PROFILES)[number], events: readonly DialingEvent[]): ChartState[] {
  const chart = createActor(dialingMachine(profile)).start();
  const look = (): ChartState => {
    const { value, context } = chart.getSnapshot();
    return { value, context };
  };
  return [
    look(),
    ...events.map((one) => {
      chart.send(one);
      return look();
    }),
  ];
}

const sequences = fc.tuple(fc.constantFrom(...SHIPPED_PROFILES), fc.array(event, { maxLength: 60 }));

/** Checks every step of any sequence: the state before, the event, the state after. */
function always(check: (before: ChartState, event: DialingEvent, after: ChartState, numbers: number) => void): void {
  fc.assert(
    fc.property(sequences, ([profile, events]) => {
      const states = statesOf(profile, events);
      events.forEach((one, i) => {
        const [before, after] = [states[i], states[i + 1]];
        if (before !== undefined && after !== undefined) check(before, one, after, profile.procedure.length);
      });
    }),
    { numRuns: 400 },
  );
}

describe("whatever a chart is told", () => {
  test("its number is one of the combination's", () => {
    always((_, __, { context }, numbers) => {
      expect(context.number).toBeGreaterThanOrEqual(0);
      expect(context.number).toBeLessThan(numbers);
    });
  });

  test("it remembers how a number was left only while a turnback can still go back to it", () => {
    always((_, __, { value, context }) => {
      if (value === "drawing") expect(context.leftAt).not.toBeNull();
      else if (value !== "turning") expect(context.leftAt).toBeNull();
    });
  });

  test("it is open only after the bolt came", () => {
    always((before, { type }, after) => {
      if (after.value === "open" && before.value !== "open") expect(type).toBe("bolt.retracted");
    });
  });

  test("the bolt is thrown only from open, and secured only from thrown", () => {
    always((before, _, after) => {
      if (after.value === "thrown" && before.value !== "thrown") expect(before.value).toBe("open");
      if (after.value === "secured" && before.value !== "secured") expect(before.value).toBe("thrown");
    });
  });

  test("it draws, fails or is done at the last number only", () => {
    always((_, __, { value, context }, numbers) => {
      const isLast = ["drawing", "failed", "open", "thrown", "secured"].includes(value);
      if (isLast) expect(context.number).toBe(numbers - 1);
      if (value === "waiting" || value === "wrongWay") expect(context).toEqual({ number: 0, leftAt: null });
    });
  });

  test("the number goes up by one at a turn about, and at most down by one when a turn is resumed", () => {
    always((before, { type }, after) => {
      const change = after.context.number - before.context.number;
      if (type === "turn.reversed" && after.value === "turning") expect(change).toBe(1);
      if (type === "turn.resumed") expect([0, -1]).toContain(change);
    });
  });

  test("a fresh start of a draw, or after a refusal, begins with the first number", () => {
    always((before, { type }, after) => {
      const isDone = before.value === "drawing" || before.value === "failed";
      if (isDone && type === "fresh.started")
        expect(after).toEqual({ value: "turning", context: { number: 0, leftAt: null } });
    });
  });

  test("a restart always waits for the first turn", () => {
    always((_, { type }, after) => {
      if (type === "attempt.restarted")
        expect(after).toEqual({ value: "waiting", context: { number: 0, leftAt: null } });
    });
  });

  test("after a refusal it takes a fresh start, a restart or a late bolt to go on", () => {
    always((before, { type }, after) => {
      if (before.value === "failed" && after.value !== "failed") {
        expect(["fresh.started", "attempt.restarted", "bolt.retracted"]).toContain(type);
      }
    });
  });

  test("an encoder opens from its first turns never: nothing holds what was dialed before", () => {
    const encoder = shippedProfile("dial-encoder");
    fc.assert(
      fc.property(fc.array(event, { maxLength: 60 }), (events) => {
        const states = statesOf(encoder, events);
        states.forEach(({ value }, i) => {
          const before = states[i - 1]?.value;
          if (value === "open") expect(["wrongWay", "waiting"]).not.toContain(before);
        });
      }),
    );
  });
});

test.each([
  { state: "waiting", number: 0, says: "waiting for the first turn" },
  { state: "turning", number: 1, says: "turning to number 2" },
  { state: "resting", number: 0, says: "on number 1" },
  { state: "overrun", number: 2, says: "past number 3" },
  { state: "open", number: 2, says: "open, at the positive stop" },
] as const)("$state at number index $number reads: $says", ({ state, number, says }) => {
  expect(stateInWords(state, number)).toBe(says);
});
