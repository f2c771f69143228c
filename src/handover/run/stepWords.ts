import { countText } from "../../wording/amountWords";
import type { HandoverEvent } from "./rules/handoverEvent";
import { isInRange } from "./rules/mountingHeight";

type Words = { readonly [Type in HandoverEvent["type"]]: (event: Extract<HandoverEvent, { type: Type }>) => string };

const DIALERS = { trainee: "You dialed it", second: "The second person dialed it" } as const;
const OUTCOMES = {
  true: "You changed the combination.",
  off: "You changed the combination.",
  spoiled: "You turned the change key.",
} as const;
const OPENINGS = {
  outside: "You pulled the door open.",
  inside: "The door was opened from inside.",
  emergency: "The door was opened by force.",
} as const;

const WORDS: Words = {
  "lock.fitted": ({ acts, checks }) =>
    `You said that the lock is fitted, after ${countText(acts.length, "act")} and ${countText(checks.length, "check")}.`,
  "lock.takenApart": () => "You took the cover off the lock, to take it apart.",
  "parts.replaced": () => "You sent for new parts. They are in the tray.",
  "mounting.measured": ({ height_in }) =>
    isInRange(height_in)
      ? `You measured ${height_in} inches: within 34 to 48 inches.`
      : `You measured ${height_in} inches: outside 34 to 48 inches. Stop: have the lock moved, or have the exception confirmed in writing by whoever has authority.`,
  "authorization.asked": () =>
    "You have the exception in writing from whoever has authority. On this bench you get it at once.",
  "ring.aligned": () => "You aligned the ring and clamped it.",
  "ring.loosened": () => "You loosened the ring.",
  "zero.set": ({ side }) => `You set the zero turning ${side}.`,
  "combination.dialed": ({ by, opened }) => `${DIALERS[by]}: ${opened ? "the bolt came back." : "it did not open."}`,
  "combination.changed": ({ outcome }) => OUTCOMES[outcome],
  "pack.rebuilt": () => "You rebuilt the wheel pack. It has its shipped combination again.",
  "bolt.thrown": () => "You threw the bolt.",
  "bolt.drawnAgain": () =>
    "You turned the dial on and the bolt came back: the wheels were still in line. That proves nothing. Spin off first.",
  "lock.spunOff": () => "You spun the lock off.",
  "holdback.set": () => "You set the holdback: the bolt stays back.",
  "holdback.released": () => "You released the holdback.",
  "observer.entered": ({ canOpen }) =>
    canOpen
      ? "You showed the observer the inside release. The observer is inside."
      : "Someone went inside and was shown nothing.",
  "observer.left": () => "The person inside came out.",
  "wayOut.checked": ({ isFree }) =>
    isFree ? "You tested the inside release: it works." : "You tested the inside release: it does not move.",
  "wayOut.cleared": () => "You cleared the inside release. Test it again.",
  "release.failed": () => "You knocked. The person inside pulled the release, but it did not move.",
  "door.shut": () => "You shut the door.",
  "door.opened": ({ by }) => OPENINGS[by],
  "record.written": () => "You wrote the record.",
  "record.refused": () => "The form refused the record.",
  "duty.signed": () => "You signed.",
};

/** What happened, in a sentence. */
export function stepWords(event: HandoverEvent): string {
  return (WORDS[event.type] as (event: HandoverEvent) => string)(event);
}
