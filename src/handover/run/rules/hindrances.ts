import type { Problem } from "../../../wording/problem";
import { all, type Condition, holds, not } from "./condition";
import { IS_LATCHED } from "./conditions";
import { carries, type Given, type HandoverEvent } from "./handoverEvent";
import { type HindranceCode, runProblem } from "./runWords";
import type { Situation } from "./situation";

/** Why something cannot be done as things stand. It is not forbidden: it is not possible, or there is nothing to do. */
export interface Hindrance {
  readonly on: HandoverEvent["type"];
  readonly given?: Given;
  readonly when: Condition;
  readonly code: HindranceCode;
}

/** What needs a lock that is together. */
const WITH_LOCK = [
  "ring.aligned",
  "ring.loosened",
  "zero.set",
  "combination.dialed",
  "combination.changed",
  "pack.rebuilt",
  "bolt.thrown",
  "bolt.drawnAgain",
  "lock.spunOff",
  "holdback.set",
] as const satisfies readonly HandoverEvent["type"][];

/** What hinders which event. An event that is hindered changes nothing and is no fault. */
export const HINDRANCES: readonly Hindrance[] = [
  ...WITH_LOCK.map((on) => ({ on, when: "fit.apart", code: "lock-in-parts" }) as const),
  { on: "door.shut", when: "fit.apart", code: "door-held-open" },
  { on: "lock.fitted", when: not("fit.apart"), code: "lock-on-door" },
  { on: "parts.replaced", when: not("fit.apart"), code: "lock-on-door" },
  { on: "lock.takenApart", when: "fit.asFound", code: "lock-as-found" },
  { on: "lock.takenApart", when: "fit.apart", code: "lock-in-parts" },
  { on: "lock.takenApart", when: "door.shut", code: "back-is-inside" },
  { on: "lock.takenApart", when: "holdback.on", code: "holdback-to-release" },
  { on: "mounting.measured", when: not("mounting.unchecked"), code: "height-measured" },
  { on: "authorization.asked", when: "mounting.unchecked", code: "height-unmeasured" },
  { on: "authorization.asked", when: "mounting.inRange", code: "height-in-range" },
  { on: "authorization.asked", when: "mounting.authorized", code: "height-settled" },
  { on: "ring.aligned", when: "ring.aligned", code: "ring-aligned" },
  { on: "ring.loosened", when: "ring.loose", code: "ring-loose" },
  { on: "zero.set", when: "zero.byRing", code: "zero-by-ring" },
  { on: "zero.set", when: "door.shut", code: "back-is-inside" },
  { on: "combination.dialed", given: { opened: true }, when: "combination.spoiled", code: "spoiled-pack-opens-never" },
  { on: "combination.changed", when: "door.shut", code: "back-is-inside" },
  { on: "combination.changed", when: "combination.spoiled", code: "pack-to-rebuild" },
  { on: "pack.rebuilt", when: not("combination.spoiled"), code: "pack-not-spoiled" },
  { on: "pack.rebuilt", when: "door.shut", code: "back-is-inside" },
  { on: "bolt.thrown", when: not("bolt.retracted"), code: "bolt-thrown" },
  { on: "bolt.drawnAgain", when: "combination.spoiled", code: "spoiled-pack-opens-never" },
  { on: "bolt.drawnAgain", when: "bolt.spunOff", code: "lock-spun-off" },
  { on: "bolt.drawnAgain", when: "bolt.retracted", code: "bolt-back" },
  { on: "holdback.set", when: "door.shut", code: "back-is-inside" },
  { on: "holdback.set", when: "holdback.on", code: "holdback-set" },
  { on: "holdback.set", when: not("bolt.retracted"), code: "bolt-not-back" },
  { on: "holdback.released", when: "holdback.off", code: "holdback-released" },
  { on: "holdback.released", when: "door.shut", code: "back-is-inside" },
  { on: "observer.entered", when: "door.shut", code: "shut-door" },
  { on: "observer.entered", when: not("inside.nobody"), code: "someone-inside" },
  { on: "observer.left", when: "inside.nobody", code: "nobody-inside" },
  { on: "observer.left", when: "door.shut", code: "person-shut-in" },
  { on: "wayOut.checked", when: "door.shut", code: "release-test-shut" },
  { on: "wayOut.checked", when: "wayOut.blocked", code: "release-blocked" },
  { on: "wayOut.cleared", when: not("wayOut.blocked"), code: "release-not-blocked" },
  { on: "wayOut.cleared", when: "door.shut", code: "shut-door" },
  { on: "release.failed", when: not(IS_LATCHED), code: "door-not-locked" },
  { on: "release.failed", when: "inside.nobody", code: "nobody-to-pull" },
  { on: "release.failed", when: "wayOut.free", code: "release-works" },
  { on: "release.failed", when: "wayOut.blocked", code: "release-known-blocked" },
  { on: "door.shut", when: "door.shut", code: "door-shut" },
  { on: "door.opened", when: "door.open", code: "door-open" },
  { on: "door.opened", given: { by: "outside" }, when: IS_LATCHED, code: "door-locked" },
  { on: "door.opened", given: { by: "inside" }, when: "inside.nobody", code: "knock-nobody" },
  { on: "door.opened", given: { by: "inside" }, when: "inside.unable", code: "knock-not-shown" },
  { on: "door.opened", given: { by: "inside" }, when: all("inside.able", "wayOut.blocked"), code: "knock-blocked" },
  { on: "door.opened", given: { by: "emergency" }, when: not(IS_LATCHED), code: "door-not-locked" },
];

/** Why an event cannot happen in a situation, or undefined where it can. */
export function hindranceOf(event: HandoverEvent, situation: Situation): Problem | undefined {
  const found = HINDRANCES.find(
    ({ on, given, when }) => on === event.type && carries(event, given) && holds(when, situation),
  );
  return found && runProblem(found.code, []);
}
