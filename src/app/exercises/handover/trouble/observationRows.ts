import { faceText, readingText } from "../../../../dialing/words";
import { DRILL_WORDS } from "../../../../drill/drillWords";
import type { Observation, TryObservation } from "../../../../handover/trouble/observation";
import type { LockCard } from "../../../../handover/trouble/trouble";
import { wordsOf } from "../../../../wording/problem";
import { signedText } from "../../../parts/signedText";

/** One thing seen, in words: what was done, and what it showed. */
export interface SeenRow {
  readonly key: string;
  readonly done: string;
  readonly showed: string;
}

const offText = (off: number) => {
  const text = signedText(off);
  return text === "0.0" ? "" : ` (${text})`;
};

function tryDone({ by, stops, off, rest_s }: TryObservation, { profile, combination }: LockCard): string {
  const numbers =
    by === "steady hand"
      ? combination.map((number, k) => `${faceText(number, profile)}${offText(off[k] ?? 0)}`)
      : stops.map((stop, k) => `${readingText(stop, profile)}${offText(off[k] ?? 0)}`);
  const rest = rest_s === null || rest_s === 0 ? "" : `, rest ${rest_s} s`;
  return `${by === "steady hand" ? "Steady hand" : "Own hand"}: ${numbers.join(" · ")}${rest}`;
}

const tryShowed = ({ opened, isTurnedRight }: TryObservation) => {
  const end = opened ? "opened" : "did not open";
  return isTurnedRight ? end : `${end}; the turns were wrong`;
};

const MARKS = ["top", "right", "bottom", "left"] as const;

/** One observation in words. */
export function seenRow(seen: Observation, index: number, card: LockCard): SeenRow {
  const key = String(index + 1);
  switch (seen.kind) {
    case "try":
      return { key, done: tryDone(seen, card), showed: tryShowed(seen) };
    case "cam":
      return { key, done: `Cam gauge, after turning ${seen.turn}`, showed: signedText(seen.value) };
    case "pull":
      return { key, done: `Pull gauge, ${seen.turn}`, showed: `moves after ${seen.value.toFixed(1)} graduations` };
    case "marks":
      return {
        key,
        done: "What the ring's marks read too much",
        showed: seen.values.map((value, k) => `${MARKS[k]} ${signedText(value, 2)}`).join(" · "),
      };
    case "push-pull":
      return { key, done: "Pushed and pulled", showed: `moves ${seen.moves_mm.toFixed(2)} mm` };
    case "turn-round":
      return {
        key,
        done: "Turned all round",
        showed: `hand ahead ${seen.least.toFixed(1)} to ${seen.most.toFixed(1)} graduations${seen.scrapes ? ", scrapes" : ""}`,
      };
    case "rules":
      return {
        key,
        done: "Numbers compared with the rules",
        showed:
          seen.broken.length === 0
            ? "none broken"
            : seen.broken.map(({ problem }) => wordsOf(problem, DRILL_WORDS)).join("; "),
      };
  }
}
