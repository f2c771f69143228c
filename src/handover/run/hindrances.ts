import { all, type Condition, holds, not } from "./condition";
import { IS_LATCHED } from "./conditions";
import { carries, type Given, type HandoverEvent } from "./handoverEvent";
import type { Situation } from "./situation";

/** Why something cannot be done as things stand. It is not forbidden: it is not possible, or there is nothing to do. */
export interface Hindrance {
  readonly on: HandoverEvent["type"];
  readonly given?: Given;
  readonly when: Condition;
  /** A sentence. */
  readonly words: string;
}

const backIsInside = "The door is shut: the back of the lock is inside. Open it first.";
const shutDoor = "The door is shut. Open it first.";

/** What hinders which event. An event that is hindered changes nothing and is no fault. */
export const HINDRANCES: readonly Hindrance[] = [
  { on: "mounting.measured", when: not("mounting.unchecked"), words: "You have measured the height already." },
  {
    on: "authorization.asked",
    when: "mounting.unchecked",
    words: "Measure first: nothing shows yet that an authorization is wanted.",
  },
  {
    on: "authorization.asked",
    when: "mounting.inRange",
    words: "The height lies in the range. There is nothing to ask.",
  },
  { on: "authorization.asked", when: "mounting.authorized", words: "The height is authorized already." },
  { on: "ring.aligned", when: "ring.aligned", words: "The ring is aligned and clamped already." },
  { on: "ring.loosened", when: "ring.loose", words: "The ring is loose already." },
  { on: "zero.set", when: "zero.byRing", words: "A wheel pack learns no zero: the ring's alignment stands for it." },
  { on: "zero.set", when: "door.shut", words: backIsInside },
  {
    on: "combination.dialed",
    given: { opened: true },
    when: "combination.spoiled",
    words: "The pack is spoiled: no numbers open it.",
  },
  { on: "combination.changed", when: "door.shut", words: backIsInside },
  {
    on: "combination.changed",
    when: "combination.spoiled",
    words: "The pack is spoiled. Take it apart and build it again first.",
  },
  { on: "pack.rebuilt", when: not("combination.spoiled"), words: "The pack is sound. There is nothing to build." },
  { on: "pack.rebuilt", when: "door.shut", words: backIsInside },
  { on: "bolt.thrown", when: not("bolt.retracted"), words: "The bolt is thrown already." },
  { on: "holdback.set", when: "door.shut", words: backIsInside },
  { on: "holdback.set", when: "holdback.on", words: "The holdback is set already." },
  {
    on: "holdback.set",
    when: not("bolt.retracted"),
    words: "A holdback holds a bolt that is drawn back, and this one is thrown. Dial the lock open first.",
  },
  { on: "holdback.released", when: "holdback.off", words: "The holdback is released already." },
  { on: "holdback.released", when: "door.shut", words: backIsInside },
  { on: "observer.entered", when: "door.shut", words: shutDoor },
  { on: "observer.entered", when: not("inside.nobody"), words: "Somebody is inside already." },
  { on: "observer.left", when: "inside.nobody", words: "Nobody is inside." },
  { on: "observer.left", when: "door.shut", words: "The door is shut: nobody gets out until it is opened." },
  { on: "wayOut.checked", when: "door.shut", words: "Check the way out while the door is open. Open it first." },
  { on: "wayOut.checked", when: "wayOut.blocked", words: "The release does not move. Clear it first." },
  { on: "wayOut.cleared", when: not("wayOut.blocked"), words: "Nothing is known to be in the way." },
  { on: "wayOut.cleared", when: "door.shut", words: shutDoor },
  { on: "release.failed", when: not(IS_LATCHED), words: "The door does not hold: nobody needs the release." },
  { on: "release.failed", when: "inside.nobody", words: "Nobody is inside to pull the release." },
  { on: "release.failed", when: "wayOut.free", words: "The release has been checked: it works." },
  { on: "release.failed", when: "wayOut.blocked", words: "It is known already that the release does not move." },
  { on: "door.shut", when: "door.shut", words: "The door is shut already." },
  { on: "door.opened", when: "door.open", words: "The door is open already." },
  {
    on: "door.opened",
    given: { by: "outside" },
    when: IS_LATCHED,
    words: "The bolt holds the door. Dial the lock open first.",
  },
  { on: "door.opened", given: { by: "inside" }, when: "inside.nobody", words: "You knock. Nobody is inside." },
  {
    on: "door.opened",
    given: { by: "inside" },
    when: "inside.unable",
    words: "You knock. Whoever is inside was not shown the release, and waits.",
  },
  {
    on: "door.opened",
    given: { by: "inside" },
    when: all("inside.able", "wayOut.blocked"),
    words: "You knock. Whoever is inside pulls the release, and it does not move.",
  },
  {
    on: "door.opened",
    given: { by: "emergency" },
    when: not(IS_LATCHED),
    words: "The door is not locked. Pull it open.",
  },
];

/** Why an event cannot happen in a situation, in a sentence; undefined where it can. */
export function hindranceOf(event: HandoverEvent, situation: Situation): string | undefined {
  return HINDRANCES.find(({ on, given, when }) => on === event.type && carries(event, given) && holds(when, situation))
    ?.words;
}
