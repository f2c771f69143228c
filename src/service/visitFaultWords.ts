import type { LookPlace } from "./visitAct";
import type { PlainFault, VisitFault } from "./visitFaultCode";
import { CHANGE_WORDS, INSTRUMENT_WORDS, LOOK_WORDS, QUESTION_WORDS, SECTION_TITLES } from "./visitNames";
import type { WrongThing } from "./wrongThing";

/** What is wrong, what it does, and what to do. */
interface FaultWords {
  readonly what: string;
  readonly does: string;
  readonly fix: string;
}

/** What can be wrong with a lock, what it does, and what to do. */
export const WRONG_WORDS: Readonly<Record<WrongThing, FaultWords>> = {
  "key-loose": {
    what: "The key's screw is loose.",
    does: "The key works itself a wider seat: lost motion grows.",
    fix: "Tighten it to the torque in the instructions.",
  },
  "key-worn": {
    what: "The key is worn: lost motion is over the limit.",
    does: "The cam follows the dial too late, and numbers dialed right are missed.",
    fix: "Replace the key, then tighten its screw.",
  },
  "ring-dirty": { what: "The ring is dirty.", does: "The dial is heavy, so the hand stops late.", fix: "Wipe it dry." },
  "bearing-dry": {
    what: "The spindle's bearing is dry.",
    does: "The dial is heavy, so the hand stops late.",
    fix: "Lubricate it where the instructions allow it. Where they forbid it, replace it.",
  },
  "ring-painted": {
    what: "There is paint between dial and ring.",
    does: "The dial scrapes and is heavy.",
    fix: "Remove the paint dry.",
  },
  "ring-off-center": {
    what: "The ring is off center.",
    does: "Each index reads wrong by its own amount. Zero compensates for one of them only.",
    fix: "Center the ring over the bushing.",
  },
  "bolt-drags": {
    what: "The bolt drags.",
    does: "The handle is heavy, and the bolt wears.",
    fix: "Lubricate it where the instructions name a lubricant. Where they name none, wipe it dry.",
  },
  "batteries-low": {
    what: "The batteries are low under load.",
    does: "The lock may stop in the middle of an opening.",
    fix: "Replace the whole set with the type in the instructions.",
  },
  "batteries-old": {
    what: "The batteries are older than the instructions allow.",
    does: "They can leak or fail without warning, even with a good voltage.",
    fix: "Replace the whole set.",
  },
  "key-stripped": {
    what: "The thread of the key's screw is stripped.",
    does: "Nothing holds the key.",
    fix: "Take the lock out of service. The spindle must be replaced.",
  },
  "batteries-mixed": {
    what: "Old and new cells are in one set.",
    does: "The new cells drive the old ones, which can leak.",
    fix: "Replace the whole set at once.",
  },
  "batteries-wrong-type": {
    what: "The cells are not the type in the instructions.",
    does: "Their voltage falls in another way, so the lock warns too late or never.",
    fix: "Use the type in the instructions.",
  },
  gummed: {
    what: "Lubricant is where it does not belong.",
    does: "The lock runs well today. The lubricant gums up later, and the lock fails with nobody near.",
    fix: "Take the lock out of service. A shop must clean it.",
  },
};

const PLAIN: Readonly<Record<PlainFault, FaultWords>> = {
  "last-record-not-read": {
    what: "You did not read the last service record.",
    does: "Without its figures you cannot tell what has changed.",
    fix: "Read it before you measure.",
  },
  "door-not-held": {
    what: "You worked at a door that was not held.",
    does: "It can fall shut on a hand, or on a lock that is not proved.",
    fix: "Hold the door open before you work.",
  },
  "not-tried-before": {
    what: "You did not prove the lock before you touched it.",
    does: "You cannot tell what was wrong before you came.",
    fix: "Dial the combination once before you take the cover off.",
  },
  "cover-without-strap": {
    what: "You took the cover off without the wrist strap.",
    does: "Static can destroy the electronics. The damage may show only months later.",
    fix: "Wear the strap before you take the cover off.",
  },
  "torque-not-as-written": {
    what: "You tightened the key's screw outside the torque in the instructions.",
    does: "Too loose, it works free. Too tight, it strips.",
    fix: "Read the torque, and set the driver to it.",
  },
  "lubricated-forbidden": {
    what: "You lubricated a part that must stay dry.",
    does: "Lubricant holds dust, and gums up.",
    fix: "Read the section on lubrication first. Leave dry what must stay dry.",
  },
  "lubricant-not-as-written": {
    what: "You used another lubricant than the instructions name.",
    does: "It can run off, or gum up.",
    fix: "Use the one that the instructions name.",
  },
  "not-proved": {
    what: "You did not prove the lock 3 times after the last thing you did to it.",
    does: "A lock that opens once can fail the next time.",
    fix: "Open it 3 times in a row at the open door, with the cover on.",
  },
  "shut-before-proof": {
    what: "The door was shut on a lock that was not proved.",
    does: "If the lock fails then, nobody gets in.",
    fix: "Prove 3 times at the open door, then shut it.",
  },
  "cover-left-off": {
    what: "You left the cover off.",
    does: "Dust and hands get into the lock.",
    fix: "Put the cover on before you prove the lock.",
  },
  "door-left-open": {
    what: "You left the door open.",
    does: "What is behind it is not secured.",
    fix: "Shut the door once the lock is proved.",
  },
  "no-record": {
    what: "You wrote no record.",
    does: "The next technician has no figures to compare with.",
    fix: "Write what you found, measured, changed and proved.",
  },
  "record-without-figures": {
    what: "There are no figures in your record.",
    does: "Nobody can tell later what has changed.",
    fix: "Write each figure with its unit.",
  },
  "record-without-changes": {
    what: "Your record does not say what you changed.",
    does: "The next technician looks for the cause in the wrong place.",
    fix: "Write each change.",
  },
  "record-without-proofs": {
    what: "Your record does not say how you proved the lock.",
    does: "Nobody knows whether it opened when you left.",
    fix: "Write how often you opened it, and with what result.",
  },
  "record-not-true": {
    what: "Your record says something that you did not do.",
    does: "Others rely on it.",
    fix: "Write only what you did.",
  },
  "combination-in-record": {
    what: "The combination is in your record.",
    does: "Whoever reads the record can open the door. The combination must be changed.",
    fix: "Never write a combination in a record.",
  },
};

const LOOK_WHY: Readonly<Record<LookPlace, string>> = {
  ring: "Dust and paint show there. No figure tells them apart.",
  bolt: "A bolt that drags is felt, not seen.",
  "way-out": "Whoever is inside must be able to leave, whatever the lock does.",
  case: "The type and the dates of the cells show there.",
};

const named = (what: string, does: string, fix: string): FaultWords => ({ what, does, fix });

/** A fault in words. */
export function faultWords(fault: VisitFault): FaultWords {
  switch (fault.code) {
    case "not-asked":
      return named(
        `You did not ask: "${QUESTION_WORDS[fault.about]}"`,
        "The holder uses the lock every day and knows what has changed.",
        "Ask before you touch the lock.",
      );
    case "section-not-read":
      return named(
        `You did not read "${SECTION_TITLES[fault.about]}" in the instructions.`,
        "Each lock has its own rules.",
        "Read every section before you begin.",
      );
    case "acted-without-instructions":
      return named(
        `You acted without the instructions: ${CHANGE_WORDS[fault.about]}.`,
        "What is right on one lock damages another.",
        "Read the section on it first.",
      );
    case "look-left-out":
      return named(
        `You left this out: ${LOOK_WORDS[fault.about].toLowerCase()}.`,
        LOOK_WHY[fault.about],
        "Do it on every visit.",
      );
    case "not-measured":
      return named(
        `You did not measure on the lock as you found it: ${INSTRUMENT_WORDS[fault.about].toLowerCase()}.`,
        "Without the figure you guess.",
        "Measure before you change anything.",
      );
    case "changed-sound":
      return named(
        `You changed something that was not wrong: ${CHANGE_WORDS[fault.about]}.`,
        "Each change can bring a new defect.",
        "Leave alone what is within its limits.",
      );
    case "left-wrong":
      return { ...WRONG_WORDS[fault.about], what: `You left this: ${WRONG_WORDS[fault.about].what}` };
    case "made-wrong":
      return { ...WRONG_WORDS[fault.about], what: `This is new: ${WRONG_WORDS[fault.about].what}` };
    case "missed-in-record":
      return named(
        `Your record does not name this: ${WRONG_WORDS[fault.about].what}`,
        "The next technician does not look for it.",
        "Write down each thing you find.",
      );
    case "invented-in-record":
      return named(
        `Your record names something that is not wrong: ${WRONG_WORDS[fault.about].what}`,
        "It sends the next technician the wrong way.",
        "Write only what a look or a figure shows.",
      );
    default:
      return PLAIN[fault.code];
  }
}
