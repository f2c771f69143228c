import { and, type GuardArgs, not, or, stateIn } from "xstate";
import { type Condition, placeParts } from "../rules/condition";
import type { HandoverFault } from "../rules/faultTriggers";
import { carries, type Given, type HandoverEvent } from "../rules/handoverEvent";
import { HINDRANCES } from "../rules/hindrances";

/** What the chart remembers beside where its regions stand: every fault so far, in order. */
export interface HandoverContext {
  readonly faults: readonly HandoverFault[];
}

/** The name of the state in which all regions run. */
export const WORKING = "working";

/** A guard of the handover's chart. */
export interface ChartGuard {
  (args: GuardArgs<HandoverContext, HandoverEvent>, params: unknown): boolean;
  _out_TGuard?: never;
}

/** A condition on the situation as a guard of the chart. */
export function when(condition: Condition): ChartGuard {
  if (typeof condition === "string") {
    const [region, state] = placeParts(condition);
    const isThere = stateIn<HandoverContext, HandoverEvent, undefined>({ [WORKING]: { [region]: state } });
    // The type of a bare stateIn fits no chart whose guards have no names; combined with nothing, it does.
    return and<HandoverContext, HandoverEvent, ChartGuard[]>([isThere as ChartGuard]);
  }
  if ("all" in condition) return and<HandoverContext, HandoverEvent, ChartGuard[]>(condition.all.map(when));
  if ("any" in condition) return or<HandoverContext, HandoverEvent, ChartGuard[]>(condition.any.map(when));
  return not<HandoverContext, HandoverEvent, ChartGuard>(when(condition.not));
}

/** A guard for an event that carries what is given, while a condition holds. */
export function ifGiven(given: Given, condition: Condition): ChartGuard {
  const isGiven: ChartGuard = ({ event }) => carries(event, given);
  return and<HandoverContext, HandoverEvent, ChartGuard[]>([isGiven, when(condition)]);
}

/** A guard that lets an event pass that nothing hinders. */
export function ifUnhindered(type: HandoverEvent["type"], guard: ChartGuard): ChartGuard {
  const hindering = HINDRANCES.filter(({ on }) => on === type).map(({ given = {}, when: condition }) =>
    not<HandoverContext, HandoverEvent, ChartGuard>(ifGiven(given, condition)),
  );
  return and<HandoverContext, HandoverEvent, ChartGuard[]>([guard, ...hindering]);
}
