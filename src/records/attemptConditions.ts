import { conditionsAt, type TryConditions } from "../drill/sheet/conditionsAt";
import type { Condition } from "../drill/sheet/sheet";
import type { Graduations } from "../lock/dial";
import type { TrainSpec } from "../lock/train/lockTrain";

/** What made an attempt harder: what a sheet can inject, and what the address of a bench alone can ask for; graduations. */
export type AttemptCondition =
  | Condition
  | { readonly kind: "keyed-off"; readonly size: Graduations }
  | ({ readonly kind: "runout" } & Required<TrainSpec>["runout"])
  | ({ readonly kind: "catching" } & NonNullable<TrainSpec["catching"]>);

/** All that holds during an attempt. */
export type HeldConditions = TryConditions & Pick<TrainSpec, "keyedOff" | "runout" | "catching">;

/**
 * What of that is not as on a well-fitted lock, in one order. Bench and sitting both keep this, so that one setting is the
 * same setting wherever it was practiced.
 *
 * @param held - what is left out is as it should be
 */
export function conditionsOf(held: Partial<HeldConditions>): AttemptCondition[] {
  const { indexOffset = 0, lostMotion = 0, noise = 0, dial = "usual", cutaway = true } = held;
  const { keyedOff = 0, runout, catching } = held;
  return [
    ...(indexOffset === 0 ? [] : [{ kind: "index-offset", size: indexOffset } as const]),
    ...(lostMotion === 0 ? [] : [{ kind: "lost-motion", size: lostMotion } as const]),
    ...(noise === 0 ? [] : [{ kind: "noise", size: noise } as const]),
    ...(keyedOff === 0 ? [] : [{ kind: "keyed-off", size: keyedOff } as const]),
    ...(runout === undefined ? [] : [{ kind: "runout", ...runout } as const]),
    ...(catching === undefined ? [] : [{ kind: "catching", ...catching } as const]),
    ...(dial === "usual" ? [] : [{ kind: `${dial}-dial` } as const]),
    ...(cutaway ? [] : [{ kind: "no-cutaway" } as const]),
  ];
}

/** Whether a sheet can inject it. */
export const isOfSheet = (one: AttemptCondition): one is Condition =>
  one.kind !== "keyed-off" && one.kind !== "runout" && one.kind !== "catching";

const ofBench = (one: AttemptCondition): Partial<HeldConditions> => {
  if (one.kind === "keyed-off") return { keyedOff: one.size };
  if (one.kind === "runout") return { runout: { size: one.size, at: one.at } };
  if (one.kind === "catching") return { catching: { drag: one.drag, at: one.at, arc: one.arc } };
  return {};
};

/** What holds under some conditions, the later over the earlier. */
export function heldUnder(conditions: readonly AttemptCondition[]): HeldConditions {
  const held = conditionsAt({ conditions: conditions.filter(isOfSheet) }, 1);
  return Object.assign(held, ...conditions.map(ofBench));
}
