import type { SetupProblem } from "../../../../../realdial/ordinary/reference";
import type { TurnHint } from "../../../../../realdial/ordinary/turnWatch";
import type { MarkName, Marks } from "./marks";
import type { OrdinaryStep } from "./ordinaryView";

type CodeOf = SetupProblem["code"];
type Of<Code extends CodeOf> = Extract<SetupProblem, { readonly code: Code }>;

const percent = (part: number) => `${Math.round(100 * part)} %`;
/** Of what is not whole before all of it is there. */
const percentSoFar = (part: number) => `${Math.floor(100 * part)} %`;

const SETUP_WORDS: { readonly [Code in CodeOf]: (problem: Of<Code>) => string } = {
  "no-marks": () =>
    "No ring of graduations was found. Put the marks on the middle of the knob and on the tip of the index, take your hand off, and try again.",
  "wrong-count": ({ counted, expected }) =>
    `The ring found has ${counted} graduations, and the dial on the screen has ${expected}. Move the marks, or choose a lock with the dial that you have.`,
  "too-small": ({ radius, needed }) =>
    `The dial is too small in the picture: ${Math.floor(radius)} pixels from middle to rim, and ${needed} are needed. Bring the camera nearer.`,
  "out-of-picture": () => "The dial is not wholly in the picture. Move the camera until its whole rim is in sight.",
  "bare-surroundings": () =>
    "There is nothing around the dial to hold the camera's place by. Stick a few scraps of tape near the dial, outside its rim.",
  "turn-not-seen": ({ part }) => `Only ${percentSoFar(part)} of a turn was seen. Turn the dial once round, slowly.`,
  "turn-not-followed": ({ lost }) =>
    `The dial was not recognized in ${percent(lost)} of the pictures. Turn slower, hold the knob by its side, and bring light.`,
  "no-numerals": () =>
    "The numerals are not seen, so no graduation can be told from the next. Bring the camera nearer, bring light, or use a dial with numerals.",
};

/** Why a dial could not be set up, and what to do. */
export const setupText = <Code extends CodeOf>(problem: Of<Code>): string =>
  (SETUP_WORDS[problem.code] as (problem: Of<Code>) => string)(problem);

const HINT_WORDS: Readonly<Record<TurnHint, string>> = {
  "too-dark": "Too dark: bring light.",
  "too-fast": "Too fast: turn slower.",
  "turned-back": "You turned back. Go on the way you began.",
  covered: "Your hand is in the way. Hold the knob by its side, with your fingertips.",
};

/** Less of a turn than this, and nobody has begun. */
const BEGUN = 0.01;

/** What to say while the slow turn is made. @param part - of the turn, that was seen */
export function hintText(hint: TurnHint | null, part: number): string {
  if (hint !== null) return HINT_WORDS[hint];
  return part < BEGUN ? "Start turning." : "Good: go on like this.";
}

/** How far the slow turn has come. */
export const partText = (part: number): string => `${percentSoFar(part)} of the turn seen`;

/** What each mark is for. */
export const MARK_TITLES: Readonly<Record<MarkName, string>> = {
  middle: "Middle of the knob",
  index: "Tip of the index",
};

/** Where a mark lies, for whoever hears it. */
export const placeText = ({ x, y }: Marks[MarkName]): string =>
  `${(100 * x).toFixed(1)} % from the left, ${(100 * y).toFixed(1)} % from the top`;

interface Finding {
  readonly step: OrdinaryStep;
  /** The mark that a tap sets; null once both are set. */
  readonly nextTap: MarkName | null;
  readonly areRemembered: boolean;
}

/** What to do with the marks next. */
export function findingText({ step, nextTap, areRemembered }: Finding): string {
  if (step === "finding") return "Looking for the dial.";
  if (nextTap === "middle") return "Tap the middle of the knob.";
  if (nextTap === "index") return "Tap the tip of the index, where it meets the rim of the dial.";
  return areRemembered
    ? "The marks are where they fitted last time. If they still fit, find the dial. If not, drag them."
    : "Look at both marks. Drag one to correct it, then find the dial.";
}
