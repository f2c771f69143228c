import { createTestModel } from "@xstate/test";
import { describe, expect, test } from "vitest";
import { transition } from "xstate";
import { type DialingEvent, dialingMachine } from "../../src/dialing/dialingMachine";
import type { Graduations } from "../../src/lock/dial";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { arrowText, ChartBench } from "../support/chartBench";
import { EVENTS, type Snapshot, takenIn } from "../support/chartEvents";
import { arrowsLeft } from "../support/drawnArrows";
import { everyTransition } from "../support/everyTransition";
import { COMBINATION } from "../support/faultTraces";
import { handled } from "../support/handled";
import { pureForm } from "../support/pureForm";

/** Every state that the chart has with any memory, found by walking it: an oracle for the paths. */
function walk(machine: ReturnType<typeof dialingMachine>) {
  const start: Snapshot = machine.resolveState({ value: "waiting", context: { number: 0, leftAt: null } });
  const keyOf = (state: Snapshot) => JSON.stringify([state.value, state.context]);
  const seen = new Map([[keyOf(start), start]]);
  const arrows: string[] = [];
  for (const state of seen.values()) {
    for (const event of takenIn(state)) {
      arrows.push(arrowText(state, event));
      const [next] = transition(machine, state, event);
      if (!seen.has(keyOf(next))) seen.set(keyOf(next), next);
    }
  }
  return { states: seen.size, arrows: new Set(arrows) };
}

/** Arrows that no motion takes as its own step: another fact comes first, and the chart has gone on by then. */
interface Never {
  readonly arrows: RegExp;
  readonly why: string;
}

/** A hand that no plan makes, and the arrow it takes. */
interface Extra {
  readonly why: string;
  readonly isLeftOpen?: boolean;
  readonly moves: readonly Graduations[];
  readonly arrow: string;
}

interface Case {
  readonly id: string;
  readonly states: number;
  readonly arrows: number;
  /** Arrows drawn in the chart that this lock never takes, with the guard that keeps it from them. */
  readonly guarded: readonly string[];
  readonly never: readonly Never[];
  readonly extras: readonly Extra[];
}

const LEFT_TURN = /(turning|resting|overrun) [13] .* by bolt.retracted/;
const RIGHT_TURN = /(turning 2 (-|at|past)|(resting|overrun) 2 -) by bolt.retracted/;

const CASES: readonly Case[] = [
  {
    id: "three-wheel",
    states: 24,
    arrows: 103,
    guarded: ["turning", "resting", "overrun", "drawing"].map((state) => `${state} by pause.exceeded`),
    never: [
      { arrows: LEFT_TURN, why: "the bolt comes by a right turn, and turning about is a fact of its own" },
      { arrows: RIGHT_TURN, why: "the turns that led there have carried the wheels off" },
      { arrows: /drawing 3 .* by fresh.started/, why: "the draw turns right, a first turn left" },
    ],
    extras: [
      {
        why: "a lock left at its combination opens to a first turn to the right",
        isLeftOpen: true,
        moves: [-40],
        arrow: "wrongWay 1 - by bolt.retracted",
      },
      {
        why: "a lock left at its combination opens to a hesitant hand",
        isLeftOpen: true,
        moves: [5, -40],
        arrow: "turning 2 before by bolt.retracted",
      },
      {
        why: "a last stop short of its number and inside the gate opens",
        moves: [338, -267, 153.875, -60],
        arrow: "drawing 3 before by bolt.retracted",
      },
      {
        why: "a last stop past its number and inside the gate opens",
        moves: [338, -267, 156.125, -60],
        arrow: "drawing 3 past by bolt.retracted",
      },
      {
        why: "a last stop far too short, brought on after the refusal and drawn again, opens",
        moves: [338, -267, 150, -60, 65, -60],
        arrow: "failed 3 - by bolt.retracted",
      },
    ],
  },
  {
    id: "dial-encoder",
    states: 24,
    arrows: 122,
    guarded: ["wrongWay by bolt.retracted"],
    never: [
      { arrows: /(turning|resting|overrun) .* by bolt.retracted/, why: "an encoder opens in the draw alone" },
      { arrows: /thrown 3 - by bolt.retracted/, why: "the first turn of what is dialed again has cleared the lock" },
      { arrows: /failed 3 - by bolt.retracted/, why: "what was dialed is forgotten: it takes a fresh start" },
      { arrows: /drawing 3 (before|past) by bolt.retracted/, why: "an encoder has no gate wider than its stops" },
      { arrows: /(turning|resting|overrun) 3 .* by fresh.started/, why: "a long turn there may be going round again" },
      { arrows: /drawing 3 before by fresh.started/, why: "a turn so long has come to the last number often enough" },
    ],
    extras: [
      {
        why: "a long last turn that stopped past its number, and a turn after it too long for a draw",
        moves: [338, -267, 367, -41],
        arrow: "drawing 3 past by fresh.started",
      },
      {
        why: "a long last turn that stopped on its number, and a turn after it too long for a draw",
        moves: [341, -270, 355, -41],
        arrow: "drawing 3 at by fresh.started",
      },
    ],
  },
];

const made = (bench: ChartBench) => (step: { readonly event: object }) => bench.make(step.event as DialingEvent);

describe.each(CASES)("the dialing chart of the $id lock", ({ id, states, arrows, guarded, never, extras }) => {
  const profile = shippedProfile(id);
  const machine = dialingMachine(profile);
  // The options of a walk replace those of the model; those of the model alone would offer events that guards refuse.
  const paths = createTestModel(pureForm(machine), everyTransition).getShortestPaths({ events: takenIn });
  const walked = walk(machine);
  const taken = new Set<string>();

  const arrowsOf = (path: (typeof paths)[number]) =>
    path.steps.slice(1).map(({ event }, i) => arrowText((path.steps[i] ?? path).state, event as DialingEvent));

  test("its paths take every arrow from every state", () => {
    const reached = new Set(paths.flatMap(({ steps }) => steps.map(({ state }) => state.value)));
    const inPaths = new Set(paths.flatMap(arrowsOf));
    process.stdout.write(
      `dialing chart, ${id}: ${reached.size} of ${Object.keys(machine.states).length} states, ` +
        `${inPaths.size} of ${walked.arrows.size} transitions (from ${walked.states} states with memory), ${paths.length} paths\n`,
    );
    expect([...reached].sort()).toEqual(Object.keys(machine.states).sort());
    expect([...inPaths].sort()).toEqual([...walked.arrows].sort());
    expect([walked.states, walked.arrows.size]).toEqual([states, arrows]);
  });

  test("its paths take every arrow that is drawn, but those its guards keep from this kind of lock", () => {
    const taken = paths.flatMap((path) =>
      path.steps
        .slice(1)
        .map(({ event }, i) => ({ from: (path.steps[i] ?? path).state, event: event as DialingEvent })),
    );
    expect(arrowsLeft(machine, taken)).toEqual(guarded);
  });

  test.each(paths.map((path) => [path.description, path] as const))("%s", async (_, path) => {
    const bench = new ChartBench(profile, COMBINATION);
    await path.test({
      // The step's event carries its payload, but is typed by its name alone.
      events: Object.fromEntries(EVENTS.map(({ type }) => [type, made(bench)])),
      states: { "*": ({ value, context }) => expect(bench.state).toEqual({ value, context }) },
    });
    for (const arrow of bench.arrows) taken.add(arrow);
  });

  test.each(extras.map((extra) => [extra.why, extra] as const))("%s", (_, { moves, arrow, isLeftOpen = false }) => {
    const asLeft = handled(profile, COMBINATION, { hand: [0, 338, 71, 226, 190, 210] }).attempt;
    const start = { dial: asLeft.dial, slack: asLeft.pack?.slack() };
    const bench = new ChartBench(profile, COMBINATION, isLeftOpen ? start : { dial: 0 });
    for (const by of moves) bench.turn(by);
    expect(bench.arrows).toContain(arrow);
    for (const one of bench.arrows) taken.add(one);
  });

  test("the engine takes every arrow as its own step, but those that no motion can", () => {
    const untaken = [...walked.arrows].filter((arrow) => !taken.has(arrow));
    process.stdout.write(
      `dialing chart, ${id}: ${taken.size} of ${walked.arrows.size} transitions by the engine alone\n`,
    );
    expect([...taken].filter((arrow) => !walked.arrows.has(arrow))).toEqual([]);
    expect(untaken.filter((arrow) => !never.some(({ arrows: those }) => those.test(arrow)))).toEqual([]);
    for (const { arrows: those, why } of never) {
      expect(
        [...taken].filter((arrow) => those.test(arrow)),
        `not so: ${why}`,
      ).toEqual([]);
      expect(
        untaken.some((arrow) => those.test(arrow)),
        `no longer: ${why}`,
      ).toBe(true);
    }
  });
});
