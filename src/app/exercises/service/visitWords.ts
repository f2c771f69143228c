import type { Answer } from "../../../service/holder";
import type { VisitObservation } from "../../../service/measure";
import type { VisitHindrance } from "../../../service/visitAct";
import type { VisitPhase } from "../../../service/visitMachine";
import { observationText } from "../fitting/seen/observationWords";

export const VISIT_CAUTIONS = [
  "Hold the door open while you work. Never let yourself be shut in, and never shut a door on a lock that is not proved.",
  "Before you take the cover off an electronic lock, wear the wrist strap: static can destroy it.",
  "Do not drill or grind near people. Never short, heat or open a battery; dispose of old ones by local rules.",
  "The maker's written instructions decide what you lubricate, tighten and replace. Local codes and your license decide what you may do.",
];

/** What can hurt at a step, where it is done. */
export const GROUP_CAUTIONS = {
  door: "Hold the door before you reach inside: it can shut on a hand. Stay where someone can open it for you.",
  strap: "Wear the wrist strap before the cover comes off: static can destroy electronics.",
  clean:
    "Move the blade away from your other hand. Use no solvent near the lock. Wear eye protection when you drive a key out or in.",
  bolt: "Keep your fingers clear of the bolt when you work it, and prove the lock with the door open.",
  locker: "Keep thread locker off your skin and out of your eyes. Read its label.",
  lubricate: "Wipe up what drips: floors get slippery.",
  cells:
    "Wear the wrist strap, and match plus and minus before you put a cell in. Never short, heat or open a cell. Tape the poles of old cells, and dispose of them by local rules.",
} as const;

export const PHASE_WORDS: Readonly<Record<VisitPhase, string>> = {
  shut: "The door is shut.",
  open: "The door is open.",
  disturbed: "The door is open. The lock is not proved since you last worked on it.",
  proved: "The door is open. The lock opened 3 times in a row.",
  shutUnproved: "The door is shut on a lock that is not proved.",
  left: "You have left the site.",
};

export const VISIT_HINDRANCE_WORDS: Readonly<Record<VisitHindrance, string>> = {
  "door-is-shut": "The door is shut. Have the holder open it first.",
  "cover-in-the-way": "The cover is in the way. Take it off first.",
  "is-so-already": "That is done already.",
  "no-such-part": "This lock has no such part.",
};

export const ANSWER_WORDS: Readonly<Record<Answer, string>> = {
  slow: "The lock answers slowly, mostly on cold mornings.",
  heavy: "The dial has become heavy.",
  "past-the-number": "I sometimes have to go a little past a number.",
  painted: "The painters did the door in summer.",
  knocked: "A cart ran into the dial last month.",
  built: "They sanded floors in the hall for weeks.",
  stiff: "The handle has become stiff.",
  nothing: "Nothing that I noticed.",
};

/** What a look, an instrument or a try showed. */
export function visitObservationText(seen: VisitObservation): string {
  switch (seen.kind) {
    case "lost-motion":
      return `The dial turns back ${seen.play.toFixed(2)} graduations before the cam follows.`;
    case "battery":
      return `The batteries give ${seen.volts.toFixed(2)} V under load.`;
    case "ring": {
      const dust = seen.isDusty ? "There is dust packed between dial and ring." : "";
      const paint = seen.isPainted ? "There is paint on the rim of the ring." : "";
      return [dust, paint].filter((one) => one !== "").join(" ") || "Dial and ring are clean.";
    }
    case "bolt":
      return seen.drags ? "The bolt drags." : "The bolt moves freely. It has no marks.";
    case "way-out":
      return "The handle inside draws the bolt. Whoever is inside can leave.";
    case "case":
      return `The cells: ${seen.types.map((type, k) => `${type}, ${seen.months[k] ?? 0} months old`).join("; ")}.`;
    case "try":
      return seen.opened ? "The lock opened." : "The lock did not open.";
    default:
      return observationText(seen);
  }
}
