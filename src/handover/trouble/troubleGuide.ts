import type { Evidence } from "./observation";
import type { TroubleKind } from "./trouble";

/** What is to be said about a kind of condition, in the words of the trade. */
export interface TroubleWords {
  readonly title: string;
  /** One line beside the choice. */
  readonly line: string;
  /** What the size is, as a label. */
  readonly sizeLabel: string;
  readonly unit: "graduations" | "seconds" | "millimeters";
  /** How far a size named may be off, in its unit: a training value. */
  readonly tolerance: number;
  /** Whether the size has a way, left or right. */
  readonly hasWay: boolean;
  /** What has to be named with it; null where nothing. */
  readonly part: "wheel" | "side" | "direction" | null;
  /** What shows it. Naming it without having looked is a guess. */
  readonly needs: readonly Evidence[];
  /** How it looks, for the debrief. */
  readonly signs: string;
  /** What tells it from its neighbors. */
  readonly tell: string;
  /** What one does about it. */
  readonly practice: string;
}

/** Where the words for a kind come from. Nothing published stands behind most of them. */
export function guideSource(kind: TroubleKind): string {
  return kind === "last-excluded" ? "MIL-HDBK-1013/8 (1989), section 2, item e.2" : "common practice, no source";
}

/** The words for every kind. */
export const TROUBLE_GUIDE: Readonly<Record<TroubleKind, TroubleWords>> = {
  "index-slipped": {
    title: "Index slipped",
    line: "The ring with the opening index is beside its true place.",
    sizeLabel: "The index is off by",
    unit: "graduations",
    tolerance: 0.3,
    hasWay: true,
    part: null,
    needs: ["cam-left", "cam-right"],
    signs:
      "The cam is off by the same amount in both directions, and every number opens that much beside the written one.",
    tell: "A single wheel set off moves one number only and leaves the cam true. Lost motion moves the cam from one side only.",
    practice: "Align the ring and clamp it, then prove the combination. On an encoder lock, set the zero again.",
  },
  "lost-motion": {
    title: "Lost motion grown",
    line: "The dial has more play before the cam follows than the card says.",
    sizeLabel: "The lost motion is now",
    unit: "graduations",
    tolerance: 0.3,
    hasWay: false,
    part: null,
    needs: ["cam-left", "cam-right"],
    signs:
      "Turning left the cam is true, turning right it stays behind. Numbers dialed right open beside the written ones.",
    tell: "A wheel set off can move the same number, but the cam then agrees with the card in both directions.",
    practice:
      "Look for a loose spindle key or a worn spline and replace the part. Changing the numbers does not fix it. Prove the lock afterwards.",
  },
  "wheel-off": {
    title: "One wheel set off",
    line: "One wheel carries a number beside the written one.",
    sizeLabel: "Its number is off by",
    unit: "graduations",
    tolerance: 0.3,
    hasWay: true,
    part: "wheel",
    needs: ["cam-left", "cam-right", "off-try"],
    signs: "The middle of what opens lies beside one written number. The other numbers and the cam are true.",
    tell: "A slipped index moves all numbers alike. Lost motion moves all numbers that are dialed right, and the cam with them.",
    practice:
      "Set the combination again with the door open, and prove it at least three times before you shut the door.",
  },
  "dial-heavy": {
    title: "Dial heavy",
    line: "The dial takes more force than it should. On this bench the hand goes ahead until the dial moves.",
    sizeLabel: "The hand goes ahead by",
    unit: "graduations",
    tolerance: 0.5,
    hasWay: false,
    part: null,
    needs: ["pull"],
    signs:
      "The dial sticks, then moves. On this bench that shows as an angle; on a real, rigid dial it is torque, not angle: ask how much force it takes.",
    tell: "With lost motion the dial moves at once and the cam does not. With a heavy dial the dial itself needs force.",
    practice:
      "Free the dial from its ring. Look for paint, dirt or a bent spindle. Use only a lubricant that the maker names.",
  },
  "gates-tight": {
    title: "Draw reached only with care",
    line: "The numbers are right, but the gates take far less than they should.",
    sizeLabel: "A number may be off by at most",
    unit: "graduations",
    tolerance: 0.15,
    hasWay: false,
    part: null,
    needs: ["off-try"],
    signs: "Every number opens around the written one, and a few tenths beside it the lock refuses.",
    tell: "With a wheel set off the window is as wide as usual and lies beside the number; here it lies on it and is narrow.",
    practice:
      "Have the wheel pack checked for dirt, a bent fence or a door that presses on the bolt. Do not teach the user to dial around it.",
  },
  "gates-wide": {
    title: "Gates worn wide",
    line: "The lock opens on numbers farther off than it should.",
    sizeLabel: "A number may be off by at most",
    unit: "graduations",
    tolerance: 0.3,
    hasWay: false,
    part: null,
    needs: ["off-try"],
    signs: "Every number opens around the written one, and far beyond the tolerance on the card.",
    tell: "Nobody notices it by dialing well. Dial a number off on purpose, to both sides.",
    practice: "Report it: the lock protects less than it should. The pack is replaced, not adjusted.",
  },
  "last-excluded": {
    title: "Last number in the excluded zone",
    line: "The combination breaks the rule for the last number.",
    sizeLabel: "It lies inside the zone by",
    unit: "graduations",
    tolerance: 0.5,
    hasWay: false,
    part: null,
    needs: ["rules"],
    signs:
      "The numbers on the card break the rule. How near the last one lies to the draw decides whether this lock is affected.",
    tell: "Gauges and tries show nothing, or only a refusal near the draw. Compare the card with the rules first.",
    practice: "Choose another last number by the rules, set it with the door open, prove it, and tell the holders.",
  },
  "zero-never-set": {
    title: "Zero never set",
    line: "The lock counts from a zero that nobody has set.",
    sizeLabel: "Numbers dialed left lie off by",
    unit: "graduations",
    tolerance: 0.3,
    hasWay: true,
    part: null,
    needs: ["cam-left", "cam-right", "off-try"],
    signs:
      "The cam agrees with the card, yet numbers dialed left and numbers dialed right both open beside the written ones.",
    tell: "A slipped index shows at the cam. A zero set in one direction leaves the numbers dialed that way true.",
    practice: "Set the zero in both directions as the written instructions say, then prove the combination.",
  },
  "zero-one-side": {
    title: "Zero set in one direction only",
    line: "The lock counts turns one way from the zero of the other way.",
    sizeLabel: "The other direction is off by",
    unit: "graduations",
    tolerance: 0.3,
    hasWay: false,
    part: "side",
    needs: ["cam-left", "cam-right", "off-try"],
    signs:
      "Numbers of one direction are true, those of the other are off by the whole lost motion; the cam agrees with the card.",
    tell: "Where lost motion has grown, the cam reads more than the card. A zero never set leaves neither direction true.",
    practice: "Set the zero again in both directions: several stops turning right, then several turning left.",
  },
  "pause-short": {
    title: "Pause limit too short",
    line: "The lock forgets what was dialed sooner than the card says.",
    sizeLabel: "It forgets after a rest of",
    unit: "seconds",
    tolerance: 1.5,
    hasWay: false,
    part: null,
    needs: ["rest-try"],
    signs:
      "Dialed briskly it opens every time; with a rest before the last number it refuses, and the stops were right.",
    tell: "A wrong zero refuses at any pace. Dial the same numbers quickly and slowly.",
    practice: "Check its power supply first, then its settings. Do not tell users to hurry.",
  },
  "ring-off-center": {
    title: "Ring off center",
    line: "The middle of the ring is beside the axis of the spindle.",
    sizeLabel: "The ring is off by",
    unit: "millimeters",
    tolerance: 0.25,
    hasWay: false,
    part: "direction",
    needs: ["marks"],
    signs:
      "Two opposite marks of the ring read too much and too little; the two between them are true. Each index is off by its own amount.",
    tell: "With a slipped index all marks are off by the same amount. Off center, opposite marks are off by opposite amounts.",
    practice:
      "Take the dial off, loosen the ring, center it with a bushing on the spindle, tighten it, and prove the lock.",
  },
  "wrong-keyway": {
    title: "Key in the wrong keyway",
    line: "The dial sits on the cam a part of a turn from where it belongs.",
    sizeLabel: "Every number is off by",
    unit: "graduations",
    tolerance: 0.5,
    hasWay: true,
    part: null,
    needs: ["cam-left", "cam-right"],
    signs: "The cam is off by a quarter of a turn in both directions, and the marks of the ring are true.",
    tell: "A ring does not slip that far, and if it did its marks would show it.",
    practice: "Take the key out, turn the dial to the right keyway, drive the key home, and prove the lock.",
  },
  "key-not-seated": {
    title: "Key not seated",
    line: "The key stands out of the cam and rides on the lever once in each turn.",
    sizeLabel: "There the hand goes ahead by",
    unit: "graduations",
    tolerance: 0.5,
    hasWay: false,
    part: null,
    needs: ["turn-round"],
    signs: "The dial is easy for most of the turn, sticks in one part of it, and jumps where that ends.",
    tell: "A heavy dial is heavy all round. A pull gauge put on at one place can miss the key.",
    practice: "Open the cover with the door open, drive the key home, tighten its screw, and prove the lock.",
  },
  "end-play": {
    title: "End play",
    line: "The dial can be pushed and pulled farther than it should.",
    sizeLabel: "It moves by",
    unit: "millimeters",
    tolerance: 0.1,
    hasWay: false,
    part: null,
    needs: ["push-pull"],
    signs:
      "The dial moves in and out of the door by more than a few tenths of a millimeter. It turns and reads as usual.",
    tell: "Lost motion is play in the turn: the cam gauge shows it. End play is along the spindle, and only a push shows it.",
    practice: "Take the lock body off, add the washers that the written instructions name, and prove the lock.",
  },
  "dial-rubs": {
    title: "Dial rubs",
    line: "The dial scrapes on its ring.",
    sizeLabel: "The hand goes ahead by",
    unit: "graduations",
    tolerance: 0.5,
    hasWay: false,
    part: null,
    needs: ["turn-round"],
    signs: "The dial scrapes as it turns and needs force all round.",
    tell: "A heavy dial needs as much force without a sound: then look at the spindle and the washers.",
    practice:
      "Take the key out, unscrew the dial by a turn or as far as the written instructions say, and prove the lock.",
  },
};
