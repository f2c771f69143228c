import type { Graduations } from "../lock/dial";
import type { LockerPlace } from "./assembly";
import type { Offset } from "./offCenter";
import type { Washer } from "./washerStack";

/** What a hand does with the parts. Where chance has a say, such as where a ring comes to lie, the act already says how. */
export type FittingAct =
  | { readonly type: "ring.put"; readonly offset: Offset; readonly turned: Graduations }
  | { readonly type: "ring.turned"; readonly by: Graduations }
  | { readonly type: "ring.tightened" }
  | { readonly type: "ring.loosened" }
  | { readonly type: "ring.taken" }
  | { readonly type: "spindle.cut"; readonly length_mm: number }
  | { readonly type: "spindle.dressed" }
  | { readonly type: "spindle.replaced" }
  | { readonly type: "washers.put"; readonly washers: readonly Washer[] }
  | { readonly type: "body.hung" }
  | { readonly type: "body.tightened" }
  | { readonly type: "body.taken" }
  /** Graduations toward the door; negative back out. */
  | { readonly type: "dial.screwed"; readonly by: Graduations }
  | { readonly type: "dial.taken" }
  | { readonly type: "key.put" }
  | { readonly type: "key.driven" }
  | { readonly type: "key.screwed"; readonly torque_Nm: number }
  | { readonly type: "key.taken" }
  | { readonly type: "locker.dropped"; readonly at: LockerPlace }
  | { readonly type: "strike.hung"; readonly above_mm: number }
  | { readonly type: "strike.moved"; readonly by_mm: number }
  | { readonly type: "strike.tightened" }
  | { readonly type: "strike.loosened" }
  | { readonly type: "cover.put" }
  | { readonly type: "cover.taken" };

/** Why a part does not go where it is to go: what stands in the way, not what is wise. */
export type Hindrance =
  | "dial-in-the-way"
  | "cover-in-the-way"
  | "body-in-the-way"
  | "key-holds-dial"
  | "glued-in"
  | "on-the-ring"
  | "no-ring"
  | "ring-is-tight"
  | "no-body"
  | "no-dial"
  | "no-key"
  | "no-strike"
  | "strike-is-tight"
  | "no-cover"
  | "is-there-already"
  | "burr-in-the-thread"
  | "too-short-to-cut"
  | "not-sawn"
  | "no-spare"
  | "keyways-apart"
  | "washers-too-thick"
  | "cover-touches-spindle";
