/** What holds for the whole of the work. */
export const CAUTIONS = [
  "Work with the door open and held. Never shut a door on a lock that is not proved.",
  "Filing and sawing throw sharp chips. Wear eye protection, and do not drill or grind near people.",
  "Before you take the cover off an electronic lock, wear the wrist strap: static can destroy it.",
  "The maker's written instructions decide sizes, torque and where thread locker goes. Local codes and your license decide what you may do.",
];

/** Where cautions come from. */
export const CAUTION_SOURCE = "common practice, no source";

/** What to mind at one step, told beside the act when it comes up. */
const STEP_CAUTIONS = {
  door: "Open the door and hold it, with a wedge or a hook, before you touch a part. Someone who can open it from inside stays with you.",
  saw: "Wear eye protection. Clamp the spindle away from the lock, and do not saw, drill or grind near people.",
  burr: "The sawn end cuts. Wear eye protection, file it before you handle it, and keep chips out of the lock.",
  static: "Wear the wrist strap before you touch the lock or its cover: static can destroy an electronic lock.",
  weight:
    "The body is heavy. Hold it from below with your other hand until a screw holds it, and keep your fingers out from between it and the plate.",
  leads:
    "Wear the wrist strap. Look for plus and minus on the board before you connect a lead: reversed leads blow its fuse. Never let the bare leads touch.",
  drive: "Wear eye protection and use a soft drift: a hard key can chip.",
  locker: "Keep thread locker off your skin and out of your eyes. Read its label.",
  bolt: "Keep your fingers clear of the bolt. The door stays open: never try the strike by shutting someone in.",
  prove:
    "Prove this lock with the door open and held, and keep your fingers clear of the bolt. Shut the door only when someone who can open it is on each side.",
} as const;

/** Names a caution at a step. */
export type CautionId = keyof typeof STEP_CAUTIONS;

/** A caution at a step, in a sentence or two. */
export const stepCaution = (id: CautionId): string => STEP_CAUTIONS[id];
