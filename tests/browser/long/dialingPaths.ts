import { createTestModel } from "@xstate/test";
import { transition } from "xstate";
import { type DialingEvent, dialingMachine } from "../../../src/dialing/dialingMachine";
import type { Profile } from "../../../src/lock/profile";
import { arrowText } from "../../support/chartBench";
import { type Snapshot, takenIn } from "../../support/chartEvents";
import { everyTransition } from "../../support/everyTransition";
import type { ChartState } from "../../support/handPlanner";
import { pureForm } from "../../support/pureForm";

/** One step along a path: an event of the chart, and the state it leads to. */
export interface PathStep {
  readonly event: DialingEvent;
  readonly arrow: string;
  readonly from: ChartState;
  readonly to: ChartState;
}

const plain = ({ value, context }: ChartState): ChartState => ({ value, context });

/**
 * The paths over every arrow of a lock's dialing chart, as `tests/dialing/dialingMachine.model.test.ts` walks them:
 * there they test the engine, here the page.
 */
export function dialingPaths(profile: Profile): readonly (readonly PathStep[])[] {
  const paths = createTestModel(pureForm(dialingMachine(profile)), everyTransition).getShortestPaths({
    events: takenIn,
  });
  return paths.map(({ steps }) =>
    steps.slice(1).map(({ event, state }, i) => {
      // The step's event carries its payload, but is typed by its name alone.
      const made = event as DialingEvent;
      const from = plain((steps[i] ?? { state }).state);
      return { event: made, arrow: arrowText(from, made), from, to: plain(state) };
    }),
  );
}

/** Every arrow from every state that the chart has with any memory, found by walking it: an oracle for the paths. */
export function arrowsOf(profile: Profile): ReadonlySet<string> {
  const machine = dialingMachine(profile);
  const keyOf = ({ value, context }: Snapshot) => JSON.stringify([value, context]);
  const start = machine.resolveState({ value: "waiting", context: { number: 0, leftAt: null } });
  const seen = new Map([[keyOf(start), start]]);
  const arrows = new Set<string>();
  for (const state of seen.values()) {
    for (const event of takenIn(state)) {
      arrows.add(arrowText(state, event));
      const [next] = transition(machine, state, event);
      if (!seen.has(keyOf(next))) seen.set(keyOf(next), next);
    }
  }
  return arrows;
}
