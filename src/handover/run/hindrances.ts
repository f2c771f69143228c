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

const backIsInside = "The door is shut and the back of the lock is inside. Open the door first.";
const shutDoor = "The door is shut. Open it first.";

/** What hinders which event. An event that is hindered changes nothing and is no fault. */
export const HINDRANCES: readonly Hindrance[] = [
  { on: "mounting.measured", when: not("mounting.unchecked"), words: "You have already measured the height." },
  {
    on: "authorization.asked",
    when: "mounting.unchecked",
    words: "Measure the height first.",
  },
  {
    on: "authorization.asked",
    when: "mounting.inRange",
    words: "The height is within 34 to 48 inches. There is nothing to settle.",
  },
  { on: "authorization.asked", when: "mounting.authorized", words: "The height is already settled in writing." },
  { on: "ring.aligned", when: "ring.aligned", words: "The ring is already aligned and clamped." },
  { on: "ring.loosened", when: "ring.loose", words: "The ring is already loose." },
  { on: "zero.set", when: "zero.byRing", words: "A wheel pack learns no zero. Its ring does that job." },
  { on: "zero.set", when: "door.shut", words: backIsInside },
  {
    on: "combination.dialed",
    given: { opened: true },
    when: "combination.spoiled",
    words: "The wheel pack is spoiled: no numbers open it.",
  },
  { on: "combination.changed", when: "door.shut", words: backIsInside },
  {
    on: "combination.changed",
    when: "combination.spoiled",
    words: "The wheel pack is spoiled. Rebuild it first.",
  },
  {
    on: "pack.rebuilt",
    when: not("combination.spoiled"),
    words: "The wheel pack is not spoiled. There is nothing to rebuild.",
  },
  { on: "pack.rebuilt", when: "door.shut", words: backIsInside },
  { on: "bolt.thrown", when: not("bolt.retracted"), words: "The bolt is already thrown." },
  { on: "bolt.drawnAgain", when: "combination.spoiled", words: "The wheel pack is spoiled: no numbers open it." },
  { on: "bolt.drawnAgain", when: "bolt.spunOff", words: "The lock is spun off. Dial the combination to open it." },
  { on: "bolt.drawnAgain", when: "bolt.retracted", words: "The bolt is already back." },
  { on: "holdback.set", when: "door.shut", words: backIsInside },
  { on: "holdback.set", when: "holdback.on", words: "The holdback is already set." },
  {
    on: "holdback.set",
    when: not("bolt.retracted"),
    words: "The bolt is thrown. The holdback can only hold a bolt that is back: dial the lock open first.",
  },
  { on: "holdback.released", when: "holdback.off", words: "The holdback is already released." },
  { on: "holdback.released", when: "door.shut", words: backIsInside },
  { on: "observer.entered", when: "door.shut", words: shutDoor },
  { on: "observer.entered", when: not("inside.nobody"), words: "Someone is already inside." },
  { on: "observer.left", when: "inside.nobody", words: "Nobody is inside." },
  { on: "observer.left", when: "door.shut", words: "The door is shut. Open it first, then let the person out." },
  { on: "wayOut.checked", when: "door.shut", words: "Test the inside release with the door open. Open it first." },
  { on: "wayOut.checked", when: "wayOut.blocked", words: "The inside release does not move. Clear it first." },
  {
    on: "wayOut.cleared",
    when: not("wayOut.blocked"),
    words: "You have not found anything in the way of the inside release.",
  },
  { on: "wayOut.cleared", when: "door.shut", words: shutDoor },
  { on: "release.failed", when: not(IS_LATCHED), words: "The door is not locked. Pull it open." },
  { on: "release.failed", when: "inside.nobody", words: "Nobody is inside to pull the release." },
  { on: "release.failed", when: "wayOut.free", words: "The inside release was tested: it works." },
  { on: "release.failed", when: "wayOut.blocked", words: "You already know that the inside release does not move." },
  { on: "door.shut", when: "door.shut", words: "The door is already shut." },
  { on: "door.opened", when: "door.open", words: "The door is already open." },
  {
    on: "door.opened",
    given: { by: "outside" },
    when: IS_LATCHED,
    words: "The door is locked. Dial the lock open first.",
  },
  { on: "door.opened", given: { by: "inside" }, when: "inside.nobody", words: "You knock. Nobody is inside." },
  {
    on: "door.opened",
    given: { by: "inside" },
    when: "inside.unable",
    words: "You knock. The person inside was not shown the release, and waits.",
  },
  {
    on: "door.opened",
    given: { by: "inside" },
    when: all("inside.able", "wayOut.blocked"),
    words: "You knock. The person inside pulls the release, but it does not move.",
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
