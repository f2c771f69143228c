import { offsetOf } from "../fitting/offCenter";
import { voltsUnderLoad } from "./batteries";
import type { Instructions } from "./papers";
import type { ServicedLock } from "./servicedLock";

/** What use does to a lock: what can be wrong with one when the technician comes. */
export const CONDITIONS = [
  "key-loose",
  "key-worn",
  "ring-dirty",
  "bearing-dry",
  "ring-painted",
  "ring-off-center",
  "bolt-drags",
  "batteries-low",
  "batteries-old",
] as const;
/** One of them. */
export type Condition = (typeof CONDITIONS)[number];

/** What a visit itself can make wrong. */
const SPOILED = ["key-stripped", "batteries-mixed", "batteries-wrong-type", "gummed"] as const;

/** All that can be wrong with a lock in service. */
export const WRONG_THINGS = [...CONDITIONS, ...SPOILED] as const;
/** One of them. */
export type WrongThing = (typeof WRONG_THINGS)[number];

type Rule = (lock: ServicedLock, instructions: Instructions) => boolean;

const RULES: Readonly<Record<WrongThing, Rule>> = {
  "key-loose": ({ assembly: { key } }) => key?.screw === "loose",
  "key-worn": ({ toFit, worn }, { lostMotionMost }) => toFit.sizes.playFresh + worn > lostMotionMost,
  "ring-dirty": ({ soil }) => soil.dirt > 0,
  "bearing-dry": ({ soil }) => soil.dryBearing > 0,
  "ring-painted": ({ soil }) => soil.paint > 0,
  "ring-off-center": ({ assembly: { ring } }, { ringOffMost_mm }) =>
    ring !== null && offsetOf(ring.offset) > ringOffMost_mm,
  "bolt-drags": ({ boltDrags }) => boltDrags,
  "batteries-low": ({ cells }, { batteries }) => cells.length > 0 && voltsUnderLoad(cells) < batteries.atLeast_V,
  "batteries-old": ({ cells }, { batteries }) => cells.some(({ months }) => months > batteries.months),
  "key-stripped": ({ assembly: { key } }) => key?.screw === "stripped",
  "batteries-mixed": ({ cells: [first, ...others] }) =>
    others.some((one) => one.months !== first?.months || one.type !== first.type),
  "batteries-wrong-type": ({ cells }, { batteries }) => cells.some(({ type }) => type !== batteries.type),
  gummed: ({ gummed }) => gummed.length > 0,
};

/** All that is wrong with a lock by its maker's written instructions. */
export const wrongNow = (lock: ServicedLock, instructions: Instructions): readonly WrongThing[] =>
  WRONG_THINGS.filter((thing) => RULES[thing](lock, instructions));
