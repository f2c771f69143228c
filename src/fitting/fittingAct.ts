import type { Graduations } from "../lock/dial";
import type { LockerPlace } from "./assembly";
import type { Leads } from "./board";
import type { Offset } from "./offCenter";
import type { Washer } from "./washerStack";

/** By chance, in [0, 1): what a touch without the strap does to a board. */
interface Touch {
  readonly luck: number;
}

/** What a hand does to the board of an electronic lock. */
export type BoardAct =
  | { readonly type: "strap.put" }
  | { readonly type: "strap.taken" }
  | ({ readonly type: "cable.plugged" } & Touch)
  | ({ readonly type: "cable.pulled" } & Touch)
  | ({ readonly type: "battery.connected"; readonly leads: Leads } & Touch)
  | ({ readonly type: "battery.disconnected" } & Touch)
  | ({ readonly type: "fuse.replaced" } & Touch)
  | ({ readonly type: "board.replaced" } & Touch);

type TouchOf<Act> = Act extends Touch ? Omit<Act, "luck"> : never;
/** An act on the board, chance left out. */
export type BoardTouch = TouchOf<BoardAct>;

/** What a hand does with the parts. Where chance has a say, such as where a ring comes to lie, the act already says how. */
export type FittingAct =
  | BoardAct
  | { readonly type: "ring.put"; readonly offset: Offset; readonly turned: Graduations }
  | { readonly type: "ring.turned"; readonly by: Graduations }
  | { readonly type: "ring.tightened" }
  | { readonly type: "ring.loosened" }
  | { readonly type: "ring.taken" }
  | { readonly type: "spindle.marked" }
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
  | "ends-inside"
  | "too-short-to-cut"
  | "not-sawn"
  | "no-spare"
  | "keyways-apart"
  | "washers-too-thick"
  | "cover-touches-spindle"
  | "no-board"
  | "no-cable"
  | "no-battery"
  | "wires-hold-board"
  | "no-wheels";
