import type { HandoverEvent } from "./handoverEvent";
import { isInRange } from "./mountingHeight";

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
  "mounting.measured": ({ height_in }) =>
    isInRange(height_in)
      ? `You measured: ${height_in} inches, within 34 to 48.`
      : `You measured: ${height_in} inches, outside 34 to 48. That wants an authorization.`,
  "authorization.asked": () => "You asked, and the height was authorized in writing.",
  "ring.aligned": () => "You aligned the ring and clamped it.",
  "ring.loosened": () => "You loosened the ring.",
  "zero.set": ({ side }) => `You set the zero turning ${side}.`,
  "combination.dialed": ({ by, opened }) => `${DIALERS[by]}: ${opened ? "the bolt came back." : "it did not open."}`,
  "combination.changed": ({ outcome }) => OUTCOMES[outcome],
  "pack.rebuilt": () => "You took the pack apart and built it again. It has its shipped combination.",
  "bolt.thrown": () => "You threw the bolt.",
  "lock.spunOff": () => "You spun the lock off.",
  "holdback.set": () => "You set the holdback: the bolt stays back.",
  "holdback.released": () => "You took the holdback off.",
  "observer.entered": ({ canOpen }) =>
    canOpen ? "You showed the observer the release, who went inside." : "Somebody went inside, shown nothing.",
  "observer.left": () => "Whoever was inside came out.",
  "wayOut.checked": ({ isFree }) =>
    isFree ? "You tried the release from inside: it works." : "You tried the release from inside: it does not move.",
  "wayOut.cleared": () => "You cleared the release. Check it again.",
  "release.failed": () => "You knocked. The release was pulled inside, and did not move.",
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
