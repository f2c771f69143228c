import type { VisitObservation } from "../../../service/measure";
import type { Instructions, LastRecord, Section } from "../../../service/papers";
import type { LubricatedPlace, ServicedLock } from "../../../service/servicedLock";
import type { Visit } from "../../../service/visit";
import type { VisitFault } from "../../../service/visitFaultCode";
import type { WrongThing } from "../../../service/wrongThing";
import { PLACE_WORDS } from "./visitActWords";

const PROOF = "With the cover on and the door open, open the lock 3 times in a row. Only then shut the door.";
const LEAVE = "Change nothing that is within these limits.";
const RING = "Wipe the ring with a dry cloth. Remove paint dry, with a plastic blade. Use no solvent.";

function placeText({ lubrication }: Instructions, place: LubricatedPlace): string {
  const what = lubrication[place];
  if (what !== null) {
    return place === "bolt"
      ? `The bolt: a trace of ${what}, only when the bolt drags.`
      : `The ${PLACE_WORDS[place]}: one drop of ${what}, only when the dial is heavy, the ring is clean and nothing scrapes.`;
  }
  const instead = { bearing: " Replace a dry bearing.", wheels: "", bolt: " Wipe a bolt that drags with a dry cloth." };
  return `The ${PLACE_WORDS[place]}: no lubricant of any kind.${instead[place]}`;
}

const torqueText = ({ torque_Nm: [least_Nm, most_Nm] }: Instructions) =>
  `Key's screw: ${least_Nm.toFixed(2)} to ${most_Nm.toFixed(2)} Nm.`;

const lostMotionText = ({ lostMotionMost }: Instructions) =>
  `Lost motion: at most ${lostMotionMost.toFixed(1)} graduations. Above that, replace the key; then tighten its screw.`;

const aheadText = ({ aheadMost }: Instructions) =>
  `The hand gets at most ${aheadMost.toFixed(1)} graduations ahead of the dial.`;

/** How far the marks may differ follows from the offset: an index reads wrong by N / (2 pi) * e / r at most. */
function ringText({ ringOffMost_mm }: Instructions, { toFit }: ServicedLock): string {
  const most = (toFit.perTurn / (2 * Math.PI)) * (ringOffMost_mm / toFit.sizes.markRadius_mm);
  return `Ring: at most ${ringOffMost_mm} mm off center. No mark then reads wrong by more than ${most.toFixed(2)} graduations.`;
}

const cellsText = ({ batteries: { type } }: Instructions) =>
  `Four new cells, ${type}, all at once. Never mix old and new, or types.`;

const cellLimitsText = ({ batteries: { atLeast_V, months } }: Instructions) =>
  `Replace the set below ${atLeast_V.toFixed(1)} V under load, or after ${months} months, whichever comes first.`;

/** What a section of the instructions of the invented maker says, for the lock that they come with. */
export function sectionText(section: Section, by: Instructions, lock: ServicedLock): readonly string[] {
  switch (section) {
    case "safety":
      return [
        "Have the holder open the door. Hold it open.",
        "Open the lock once with its combination before you touch anything.",
        ...(lock.kind === "electronic" ? ["Wear the wrist strap before you take the cover off."] : []),
        "Make sure that the handle inside draws the bolt, before you begin and when you leave.",
      ];
    case "lubrication": {
      const places: readonly LubricatedPlace[] =
        lock.kind === "wheel-pack" ? ["bearing", "wheels", "bolt"] : ["bearing", "bolt"];
      return [RING, ...places.map((place) => placeText(by, place))];
    }
    case "limits":
      return [
        torqueText(by),
        lostMotionText(by),
        aheadText(by),
        ringText(by, lock),
        `Service every ${by.serviceMonths} months. ${LEAVE}`,
      ];
    case "batteries":
      return [cellsText(by), cellLimitsText(by)];
    case "proof":
      return [PROOF, "Write down what you found, measured, changed and proved. Never write a combination."];
  }
}

/** The sentence of the instructions that decides whether something is wrong, or what to do about it. */
export function decidedBy(thing: Exclude<WrongThing, "gummed">, by: Instructions, lock: ServicedLock): string {
  switch (thing) {
    case "key-loose":
    case "key-stripped":
      return torqueText(by);
    case "key-worn":
      return lostMotionText(by);
    case "ring-dirty":
    case "ring-painted":
      return RING;
    case "bearing-dry":
      return placeText(by, "bearing");
    case "bolt-drags":
      return placeText(by, "bolt");
    case "ring-off-center":
      return ringText(by, lock);
    case "batteries-low":
    case "batteries-old":
      return cellLimitsText(by);
    case "batteries-mixed":
    case "batteries-wrong-type":
      return cellsText(by);
  }
}

/** The sentence of the instructions that a fault goes against; "" where they say nothing of it. */
export function brokenText(fault: VisitFault, { task, done }: Visit): string {
  const { instructions: by, lock } = task;
  switch (fault.code) {
    case "left-wrong":
    case "missed-in-record":
    case "made-wrong":
      return fault.about === "gummed" ? "" : decidedBy(fault.about, by, lock);
    case "torque-not-as-written":
      return torqueText(by);
    case "lubricated-forbidden":
    case "lubricant-not-as-written": {
      const places = new Set(done.flatMap(({ act }) => (act.type === "lubricated" ? [act.at] : [])));
      return [...places].map((place) => placeText(by, place)).join(" ");
    }
    case "changed-sound":
      return LEAVE;
    case "not-proved":
    case "shut-before-proof":
      return PROOF;
    default:
      return "";
  }
}

/** The limit beside what was seen, for full help: from a section that was read, and nothing of one that was not. */
export function limitText(seen: VisitObservation, { task, lock, done }: Visit): string {
  const hasRead = (section: Section) => done.some(({ act }) => act.type === "section.read" && act.section === section);
  const from = (section: Section, text: string) => (hasRead(section) ? `Instructions: ${text}` : "");
  const by = task.instructions;
  switch (seen.kind) {
    case "lost-motion":
      return from("limits", lostMotionText(by));
    case "turn-round":
      return from("limits", aheadText(by));
    case "marks":
      return from("limits", ringText(by, lock));
    case "key":
      return from("limits", torqueText(by));
    case "battery":
    case "case":
      return from("batteries", cellLimitsText(by));
    case "bolt":
      return from("lubrication", placeText(by, "bolt"));
    case "ring":
      return from("lubrication", RING);
    default:
      return "";
  }
}

/** What the last service record says. */
export const lastRecordText = ({ monthsAgo, lostMotion, ahead }: LastRecord): readonly string[] => [
  `Last service: ${monthsAgo} months ago. All within limits.`,
  `Lost motion: ${lostMotion.toFixed(2)} graduations. The hand got ${ahead.toFixed(1)} graduations ahead.`,
  "Opened 3 times in a row after the work.",
];
