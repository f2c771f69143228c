import type { Turn } from "../../../lock/dial";
import { signedText } from "../../parts/signedText";
import type { CutawayKey, CutawayView, CutawayWheel } from "./cutawayView";

/** The words of one line of a label, in the two parts that it is broken into where the column is narrow. */
export type Words = readonly [string, string?];

/**
 * What the words tell in figures: how far the wheels are off and what the dial reads; only how far the wheels are off;
 * or nothing.
 */
export type Figures = "all" | "errors" | "none";

/** "+0.4," "in the gate"; or "12.3 off". Without figures "in the gate", or "off its gate". */
export function errorWords({ error, isTrue }: CutawayWheel, numbersIncrease: Turn, figures: Figures = "all"): Words {
  if (figures === "none") return [isTrue ? "in the gate" : "off its gate"];
  return isTrue
    ? [`${signedText(numbersIncrease === "left" ? error : -error)},`, "in the gate"]
    : [`${Math.abs(error).toFixed(1)} off`];
}

/** "driven" "right"; or "at rest". */
export function wheelStateWords({ driven }: CutawayWheel): Words {
  return driven === null ? ["at rest"] : ["driven", driven];
}

/** "at 31.2"; empty where the reading is not told. */
export function camReadingWords({ reading }: CutawayView["cam"], figures: Figures): Words {
  return [figures === "all" ? `at ${reading}` : ""];
}

/** "driving" "right"; "drawing" "the bolt"; "turns free" while it carries nothing. */
export function camStateWords({ cam, isNoseDown, retraction }: CutawayView): Words {
  if (cam.driving !== null) return ["driving", cam.driving];
  if (!isNoseDown) return ["turns free"];
  return retraction >= 1 ? ["at the", "stop"] : ["drawing", "the bolt"];
}

/** "thrown", "drawn back", or how much of it: a bolt on its way is neither. */
export function boltWords(retraction: number): Words {
  if (retraction >= 1) return ["drawn", "back"];
  return retraction <= 0 ? ["thrown"] : ["on its", "way"];
}

/** "wheel 2, number 67: driven right, 11.4 off its gate": for a screen reader. */
export function wheelSentence(wheel: CutawayWheel, numbersIncrease: Turn, figures: Figures = "all"): string {
  const error = errorWords(wheel, numbersIncrease, figures).join(" ");
  const state = wheelStateWords(wheel).join(" ");
  const what = wheel.isTrue || figures === "none" ? "" : " its gate";
  return `wheel ${wheel.wheel}, number ${wheel.number}: ${state}, ${error}${what}`;
}

/** The cam, the lever and the bolt in one sentence each: for a screen reader. */
export function leverSentences(view: CutawayView, figures: Figures = "all"): readonly string[] {
  const lever = view.isNoseDown
    ? "lever nose in the cam, fence in every gate"
    : "lever nose on the cam, fence above the wheels";
  const cam = ["cam", ...camReadingWords(view.cam, figures)].join(" ").trim();
  return [`${cam}: ${camStateWords(view).join(" ")}`, lever, `bolt ${boltWords(view.retraction).join(" ")}`];
}

const KEY_WORDS: Readonly<Record<CutawayKey["place"], string>> = {
  out: "change key out",
  in: "change key in, through the key holes",
  turned: "change key turned, holding the gates",
};

/** "change key out; key holes 0.0, 12.3 and 4.0 from the key port": for a screen reader. */
export function keySentence({ place, errors }: CutawayKey): string {
  const sizes = errors.map((error) => Math.abs(error).toFixed(1)).join(", ");
  return `${KEY_WORDS[place]}; key holes ${sizes} from the key port`;
}
