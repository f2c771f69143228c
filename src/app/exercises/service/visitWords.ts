import type { Answer } from "../../../service/holder";
import type { VisitObservation } from "../../../service/measure";
import type { Instructions, LastRecord, Section } from "../../../service/papers";
import type { LubricatedPlace } from "../../../service/servicedLock";
import type { Instrument, LookPlace, Question, VisitChange, VisitHindrance } from "../../../service/visitAct";
import type { VisitPhase } from "../../../service/visitMachine";
import type { Condition } from "../../../service/wrongThing";
import { observationText } from "../fitting/seen/observationWords";

export const VISIT_CAUTIONS = [
  "Hold the door open while you work. Never let yourself be shut in, and never shut a door on a lock that is not proved.",
  "Before you take the cover off an electronic lock, wear the wrist strap: static can destroy it.",
  "Do not drill or grind near people. Never short, heat or open a battery; dispose of old ones by local rules.",
  "The maker's written instructions decide what you lubricate, tighten and replace. Local codes and your license decide what you may do.",
];

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

export const QUESTION_WORDS: Readonly<Record<Question, string>> = {
  trouble: "Has anything changed when you open it?",
  "work-nearby": "Has anyone worked on the door or near it?",
};

export const ANSWER_WORDS: Readonly<Record<Answer, string>> = {
  slow: "It answers slowly, mostly on cold mornings.",
  heavy: "The dial has become heavy.",
  "past-the-number": "I sometimes have to go a little past a number.",
  painted: "The painters did the door in summer.",
  knocked: "A cart ran into the dial last month.",
  built: "They sanded floors in the hall for weeks.",
  nothing: "Nothing that I noticed.",
};

export const LOOK_WORDS: Readonly<Record<LookPlace, string>> = {
  ring: "dial and ring",
  bolt: "the bolt",
  case: "the battery case",
};

export const INSTRUMENT_WORDS: Readonly<Record<Instrument, string>> = {
  "turn-round": "Turn the dial all round",
  "lost-motion": "Measure the lost motion",
  marks: "Read at four marks of the ring",
  key: "Try the key's screw",
  battery: "Measure the batteries under load",
};

export const CHANGE_WORDS: Readonly<Record<VisitChange["type"] | "cover.taken", string>> = {
  "cover.taken": "you took the cover off",
  "screw.tightened": "you tightened the key's screw",
  "key.replaced": "you replaced the key",
  "bearing.replaced": "you replaced the spindle's bearing",
  "ring.cleaned": "you wiped the ring",
  "paint.removed": "you removed paint",
  "ring.centered": "you centered the ring",
  lubricated: "you lubricated a part",
  "batteries.replaced": "you replaced batteries",
};

export const PLACE_WORDS: Readonly<Record<LubricatedPlace, string>> = {
  bearing: "spindle's bearing",
  wheels: "wheels",
  bolt: "bolt",
};

export const CONDITION_LABELS: Readonly<Record<Condition, string>> = {
  "key-loose": "Key's screw loose",
  "key-worn": "Key worn: lost motion over the limit",
  "ring-dirty": "Ring dirty",
  "bearing-dry": "Spindle's bearing dry",
  "ring-painted": "Paint between dial and ring",
  "ring-off-center": "Ring off center",
  "batteries-low": "Batteries low under load",
  "batteries-old": "Batteries over their age",
};

export const SECTION_TITLES: Readonly<Record<Section, string>> = {
  safety: "Before you begin",
  lubrication: "Cleaning and lubrication",
  limits: "Limits and torque",
  batteries: "Batteries",
  proof: "Proof and record",
};

type SectionText = (by: Instructions) => readonly string[];

const lubricationText: SectionText = ({ lubrication }) => [
  "Wipe the ring with a dry cloth. Remove paint dry, with a plastic blade. Use no solvent.",
  ...(Object.keys(PLACE_WORDS) as LubricatedPlace[]).map((place) => {
    const what = lubrication[place];
    if (what === null) return `The ${PLACE_WORDS[place]}: no lubricant of any kind.`;
    return place === "bolt"
      ? `The bolt: a trace of ${what}, only when the bolt drags.`
      : `The ${PLACE_WORDS[place]}: one drop of ${what}, only when the dial is heavy and the ring is clean.`;
  }),
  ...(lubrication.bearing === null ? ["Replace a dry bearing."] : []),
];

/** What each section of the instructions of the invented maker says. */
export const SECTION_TEXTS: Readonly<Record<Section, SectionText>> = {
  safety: () => [
    "Have the holder open the door. Hold it open.",
    "Open the lock once with its combination before you touch anything.",
    "Electronic locks: wear the wrist strap before you take the cover off.",
  ],
  lubrication: lubricationText,
  limits: ({ torque_Nm: [least_Nm, most_Nm], lostMotionMost, aheadMost, ringOffMost_mm, serviceMonths }) => [
    `Key's screw: ${least_Nm.toFixed(2)} to ${most_Nm.toFixed(2)} Nm.`,
    `Lost motion: at most ${lostMotionMost.toFixed(1)} graduations. Above that, replace the key; then tighten its screw.`,
    `The hand gets at most ${aheadMost} graduation ahead of the dial.`,
    `Ring: at most ${ringOffMost_mm} mm off center. With 100 graduations the four marks then differ by less than 0.2 graduations.`,
    `Service every ${serviceMonths} months. Change nothing that is within these limits.`,
  ],
  batteries: ({ batteries: { type, atLeast_V, months } }) => [
    `Four new cells, ${type}, all at once. Never mix old and new, or types.`,
    `Replace the set below ${atLeast_V.toFixed(1)} V under load, or after ${months} months, whichever comes first.`,
  ],
  proof: () => [
    "With the cover on and the door open, open the lock 3 times in a row. Only then shut the door.",
    "Write down what you found, measured, changed and proved. Never write a combination.",
  ],
};

/** What the last service record says. */
export const lastRecordText = ({ monthsAgo, lostMotion, ahead }: LastRecord): readonly string[] => [
  `Last service: ${monthsAgo} months ago. All within limits.`,
  `Lost motion: ${lostMotion.toFixed(2)} graduations. The hand got ${ahead.toFixed(1)} graduations ahead.`,
  "Opened 3 times in a row after the work.",
];

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
      return "The bolt moves freely. It has no marks.";
    case "case":
      return `The cells: ${seen.types.map((type, k) => `${type}, ${seen.months[k] ?? 0} months old`).join("; ")}.`;
    case "try":
      return seen.opened ? "The lock opened." : "The lock did not open.";
    default:
      return observationText(seen);
  }
}
