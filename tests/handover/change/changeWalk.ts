import { expect } from "vitest";
import { createActor } from "xstate";
import type { Change } from "../../../src/handover/change/change";
import type { ChangeFact } from "../../../src/handover/change/changeFact";
import type { ChangeState } from "../../../src/handover/change/changeInHand";
import type { encoderChangeMachine } from "../../../src/handover/change/encoderChangeMachine";
import type { packChangeMachine } from "../../../src/handover/change/packChangeMachine";

/** A change, and the ways to make each fact of its chart happen on the lock under it. */
export interface Walked<Kind extends Change> {
  readonly chart: typeof packChangeMachine | typeof encoderChangeMachine;
  readonly fresh: () => Kind;
  readonly make: (change: Kind, fact: ChangeFact) => void;
  /** What must be true of the lock itself in each state, read off its mechanics. */
  readonly isTrue: Readonly<Partial<Record<ChangeState, (change: Kind) => boolean>>>;
}

/** Makes every path happen on a lock: its chart must come to what the bare chart comes to, and its mechanics to what that says. */
export function walkOnLock<Kind extends Change>(
  { chart, fresh, make, isTrue }: Walked<Kind>,
  paths: readonly (readonly ChangeFact[])[],
): void {
  for (const path of paths) {
    const change = fresh();
    const bare = createActor(chart).start();
    for (const [k, fact] of path.entries()) {
      make(change, fact);
      bare.send(fact);
      const { value, context } = bare.getSnapshot();
      const way = path.slice(0, k + 1).map(({ type }) => type);
      const stood = change.chart.getSnapshot();
      expect({ value: stood.value, context: stood.context }, way.join(", ")).toEqual({ value, context });
      expect(isTrue[value]?.(change), `${way.join(", ")}: ${value}`).toBe(true);
    }
  }
}
