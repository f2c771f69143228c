import type { SelfCheck } from "../../../../fitting/board";
import type { FitCheck, FitObservation } from "../../../../fitting/fitCheck";
import type { KeyScrew } from "../../../../fitting/keySeat";
import { graduationsText } from "../../../../wording/amountWords";
import { signedText } from "../../../parts/signedText";

type Of<Kind extends FitCheck> = Extract<FitObservation, { readonly kind: Kind }>;
type Words = { readonly [Kind in FitCheck]: (seen: Of<Kind>) => string };

const mm = (size: number, places: number) => `${size.toFixed(places)} mm`;

const SCREW: Readonly<Record<KeyScrew, string>> = {
  out: "Its screw is not in.",
  loose: "Its screw turns under two fingers.",
  firm: "Its screw is firm.",
  stripped: "Its screw turns and never gets firm.",
};

const PLACES = ["top", "right", "bottom", "left"] as const;
const round = (figures: readonly string[]) => figures.map((figure, k) => `${PLACES[k]} ${figure}`).join(", ");

const TURNED = ["0", "1/4 turn", "1/2 turn", "3/4 turn"] as const;

const LEADS = {
  right: "The battery's leads are as the mark on the board shows.",
  reversed: "The battery's leads are the other way round from the mark on the board.",
  none: "The battery is not connected.",
};

const SELF_CHECK: Readonly<Record<Exclude<SelfCheck, "silent">, string>> = {
  passes: "DIAL FOUND, READING AT REST",
  "no-encoder": "NO DIAL FOUND",
  unsteady: "READING WANDERS",
};

const eyeText = (angle_deg: number) => `${Math.abs(angle_deg)}° to the ${angle_deg < 0 ? "left" : "right"}`;

const WORDS: Words = {
  depth: ({ out_mm }) =>
    out_mm < 0
      ? `The spindle ends ${mm(-out_mm, 1)} inside the cam.`
      : `The spindle is ${mm(out_mm, 1)} out of the cam.`,
  feelers: ({ leaves_mm }) => `Thickest leaf that goes in: ${round(leaves_mm.map((leaf) => mm(leaf, 2)))}.`,
  "turn-round": ({ ahead, catches, scrapes }) =>
    [
      `The hand gets ${graduationsText(ahead.toFixed(1))} ahead of the dial.`,
      scrapes ? "It scrapes on the ring." : "Nothing scrapes.",
      catches ? "It catches once in each turn." : "",
    ]
      .join(" ")
      .trim(),
  "push-pull": ({ moves_mm, scrapes }) =>
    `The dial moves ${mm(moves_mm, 2)}.${scrapes ? " Pushed in, it scrapes on the ring." : ""}`,
  rim: ({ slits_mm }) =>
    `Slit at the top: ${slits_mm.map((slit, k) => `${mm(slit, 2)} with the dial at ${TURNED[k]}`).join(", ")}.`,
  key: ({ standsProud, screw, lockerAt }) =>
    [
      standsProud ? "The key is not all the way in." : "The key is all the way in.",
      SCREW[screw],
      lockerAt.includes("key-screw") ? "There is thread locker on it." : "There is no thread locker on it.",
      lockerAt.includes("spindle-thread") ? "There is thread locker on the spindle's thread." : "",
    ]
      .join(" ")
      .trim(),
  nose: ({ isClear }) =>
    isClear
      ? "Nothing on the cam touches the lever: its nose is clear."
      : "The head of the key touches the lever: its nose is not clear.",
  side: ({ eyes }) =>
    `Compared with straight on, the index reads ${eyes.map(({ angle_deg, error }) => `${signedText(error, 2)} graduations from ${eyeText(angle_deg)}`).join(" and ")}. The gap does that: read straight on.`,
  zero: ({ reads }) => `The dial reads ${signedText(reads, 1)} graduations from 0.`,
  marks: ({ readings }) =>
    `Reads too high (+) or too low (−): ${round(readings.map(({ error }) => signedText(error, 2)))} graduations.`,
  wheels: ({ turn }) => (turn ? "Every wheel turns freely." : "The wheels are stuck together."),
  screws: ({ give }) => (give.length === 0 ? "Every screw is tight." : `Loose: ${give.join(", ")}.`),
  bolt: ({ drags, ahead }) => {
    if (drags === null) return "There is no strike for the bolt.";
    return drags
      ? `The bolt drags on the strike: the hand gets ${graduationsText(ahead.toFixed(1))} farther ahead before it comes.`
      : "The bolt goes in freely.";
  },
  cover: ({ isOn }) => (isOn ? "The cover is on." : "The cover is off."),
  wires: ({ leads, hasCable, isFuseBlown }) =>
    [
      LEADS[leads ?? "none"],
      `The encoder's cable is ${hasCable ? "plugged in" : "not plugged in"}.`,
      `The fuse is ${isFuseBlown ? "black inside" : "clear"}.`,
    ].join(" "),
  "self-check": ({ shows }) =>
    shows === "silent" ? "The training lock shows nothing." : `The training lock shows: ${SELF_CHECK[shows]}.`,
};

/** What a check showed, in a sentence or two. */
export const observationText = (seen: FitObservation): string =>
  (WORDS[seen.kind] as (seen: FitObservation) => string)(seen);
