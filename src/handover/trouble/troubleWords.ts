import { sizeText } from "../../wording/amountWords";
import type { Evidence } from "./observation";
import type { Trouble } from "./trouble";
import { TROUBLE_GUIDE } from "./troubleGuide";

const ONE = { graduations: "graduation", seconds: "second", millimeters: "millimeter" } as const;

/**
 * A size with its unit and its way: "1.4 graduations left".
 *
 * @param isFine - to the hundredth, where a difference from it is told to the hundredth
 */
export function troubleSizeWords({ kind, size }: Pick<Trouble, "kind" | "size">, isFine = false): string {
  const { unit, hasWay, tolerance } = TROUBLE_GUIDE[kind];
  // A window of a few tenths asks for hundredths.
  const amount = isFine || tolerance < 0.2 ? Math.abs(size).toFixed(2) : sizeText(size);
  const way = hasWay ? ` ${size < 0 ? "right" : "left"}` : "";
  return `${amount} ${Number(amount) === 1 ? ONE[unit] : unit}${way}`;
}

const PARTS = {
  wheel: (part: string) => `wheel ${part}`,
  side: (part: string) => `set turning ${part}`,
  direction: (part: string) => `toward the ${part}`,
} as const;

/** A part in words: "wheel 2", "set turning left"; "" where there is none. */
export function partWords({ kind, part }: Pick<Trouble, "kind" | "part">): string {
  if (part === null) return "";
  return PARTS[TROUBLE_GUIDE[kind].part ?? "side"](part);
}

/** A condition with its place and size: "One wheel set off: wheel 2, 1.4 graduations left". */
export function troubleSentence(trouble: Trouble): string {
  const place = partWords(trouble);
  return `${TROUBLE_GUIDE[trouble.kind].title}: ${place === "" ? "" : `${place}, `}${troubleSizeWords(trouble)}`;
}

const EVIDENCE: Readonly<Record<Evidence, string>> = {
  "cam-left": "read the cam after turning left",
  "cam-right": "read the cam after turning right",
  pull: "put the pull gauge on the dial",
  marks: "read the four marks of the ring",
  "push-pull": "pushed and pulled the dial",
  "turn-round": "turned the dial all round",
  rules: "compared the numbers with the rules",
  "off-try": "dialed a number off on purpose",
  "rest-try": "dialed with a rest",
};

/** What was not looked at: "read the cam after turning left, nor dialed a number off on purpose". */
export function evidenceWords(missing: readonly Evidence[]): string {
  return missing.map((one) => EVIDENCE[one]).join(", nor ");
}
