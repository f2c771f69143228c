import { all, any, type Condition, holds, not } from "./rules/condition";
import { CAN_TAKE_APART, IS_USELESS, READS_TRUE } from "./rules/conditions";
import type { HandoverEvent } from "./rules/handoverEvent";
import type { Situation } from "./rules/situation";

/** Groups of acts, in the order of the job. */
export type ActGroupTitle = "Fit" | "Prepare" | "Lock" | "Door" | "People" | "Paper";

/** What to do next in a handover. */
export interface NextStep {
  readonly group: ActGroupTitle;
  /** What to do, as a sentence. */
  readonly say: string;
  /** What comes of it. */
  readonly on: HandoverEvent["type"];
}

interface Rule extends NextStep {
  readonly when: Condition;
}

/** The first rule that holds says what comes next. Trouble comes first, then the job in its order. */
const RULES: readonly Rule[] = [
  {
    when: all("entry.lockedOut", "escape.shutIn"),
    group: "Door",
    say: "Someone is shut inside, and the lock does not open. Have the door opened by force, at once.",
    on: "door.opened",
  },
  {
    when: "entry.lockedOut",
    group: "Door",
    say: "You are locked out. Have the door opened by force.",
    on: "door.opened",
  },
  { when: all("door.shut", "bolt.retracted"), group: "Door", say: "Pull the door open.", on: "door.opened" },
  {
    when: all("door.shut", IS_USELESS),
    group: "People",
    say: "Knock: the person inside opens the door.",
    on: "door.opened",
  },
  {
    when: all("door.shut", "escape.shutIn"),
    group: "Lock",
    say: "Dial the lock open: someone is shut inside.",
    on: "combination.dialed",
  },
  { when: "door.shut", group: "Lock", say: "Open the lock from outside.", on: "combination.dialed" },
  { when: "holdback.on", group: "Door", say: "Release the holdback.", on: "holdback.released" },
  {
    when: "fit.apart",
    group: "Fit",
    say: "Fit the lock, make every check, then say that it is fitted.",
    on: "lock.fitted",
  },
  {
    when: all(CAN_TAKE_APART, "fitChecks.unmade"),
    group: "Fit",
    say: "Not every check of the fit was made. Take the lock apart again, and make them.",
    on: "lock.takenApart",
  },
  { when: "mounting.unchecked", group: "Prepare", say: "Measure the height of the dial.", on: "mounting.measured" },
  {
    when: "mounting.outOfRange",
    group: "Prepare",
    say: "The height is out of range. Get the exception in writing.",
    on: "authorization.asked",
  },
  {
    when: "ring.loose",
    group: "Prepare",
    say: "Align the ring with the line on the case, and clamp it.",
    on: "ring.aligned",
  },
  { when: not(READS_TRUE), group: "Prepare", say: "Set the zero turning right and turning left.", on: "zero.set" },
  { when: "combination.spoiled", group: "Lock", say: "Rebuild the wheel pack.", on: "pack.rebuilt" },
  {
    when: all("shippedTry.untried", "combination.shipped"),
    group: "Lock",
    say: "Open the lock with its shipped combination, door open.",
    on: "combination.dialed",
  },
  {
    when: not("combination.ownTrue"),
    group: "Lock",
    say: "Change the combination to one of the customer's own.",
    on: "combination.changed",
  },
  {
    when: "rules.broken",
    group: "Lock",
    say: "Change to a combination that the rules of the lock allow.",
    on: "combination.changed",
  },
  {
    when: not("proofs.thrice"),
    group: "Lock",
    say: "Open it three times in a row, door open.",
    on: "combination.dialed",
  },
  {
    when: "second.unproved",
    group: "People",
    say: "Let the second person open it.",
    on: "combination.dialed",
  },
  {
    when: all("shown.neither", not("bolt.retracted")),
    group: "Lock",
    say: "Open the lock: a holdback holds a bolt that is back.",
    on: "combination.dialed",
  },
  { when: "shown.neither", group: "Door", say: "Show the holdback: set it, then release it.", on: "holdback.set" },
  {
    when: "wayOut.unchecked",
    group: "Door",
    say: "Test the inside release.",
    on: "wayOut.checked",
  },
  {
    when: "wayOut.blocked",
    group: "Door",
    say: "Clear the inside release, then test it again.",
    on: "wayOut.cleared",
  },
  {
    when: all("observed.notYet", "inside.unable"),
    group: "People",
    say: "Let the person inside out: that person was shown nothing.",
    on: "observer.left",
  },
  {
    when: all("observed.notYet", "inside.nobody"),
    group: "People",
    say: "Show an observer the inside release and let them stay inside.",
    on: "observer.entered",
  },
  {
    when: all(any("observed.notYet", "outside.unproved"), not("bolt.spunOff")),
    group: "Lock",
    say: "Spin the lock off.",
    on: "lock.spunOff",
  },
  { when: any("observed.notYet", "outside.unproved"), group: "Door", say: "Shut the door.", on: "door.shut" },
  { when: not("inside.nobody"), group: "People", say: "Let the person inside out.", on: "observer.left" },
  { when: not("bolt.spunOff"), group: "Lock", say: "Spin the lock off.", on: "lock.spunOff" },
  {
    when: all("shippedTry.untried", "record.unwritten"),
    group: "Paper",
    say: "The shipped combination was never tried. Look back, and undo the change.",
    on: "record.written",
  },
  { when: "record.unwritten", group: "Paper", say: "Write the record.", on: "record.written" },
];

const SIGN: NextStep = { group: "Paper", say: "Sign the door off.", on: "duty.signed" };

/** What to do next, as a careful technician would. */
export function nextStep(situation: Situation): NextStep {
  return RULES.find(({ when }) => holds(when, situation)) ?? SIGN;
}
