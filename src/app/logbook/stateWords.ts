import { countText } from "./figures/numbers";

/** How safe the records are. */
export interface KeepingState {
  /** Records that wait in this tab. */
  readonly pending: number;
  /** Why, in a sentence; null while all is well. */
  readonly problem: string | null;
  /** Whether the browser promises not to clear them; null before it was asked. */
  readonly promise: "kept" | "refused" | "unknown" | null;
}

const PROMISES = {
  kept: "The browser has promised not to clear them.",
  refused: "The browser may clear them when room is short: export now and then.",
  unknown: "This browser makes no promise to keep them: export now and then.",
} as const;

/** Where the records are and how safe, in one or two sentences. */
export function keepingWords({ pending, problem, promise }: KeepingState): string {
  const waiting = pending === 0 ? "" : `${countText(pending, "record waits", "records wait")} in this tab. `;
  if (problem !== null) return `${waiting}${problem}`;
  const here = "All records are kept in this browser, on this device alone.";
  return promise === null ? here : `${here} ${PROMISES[promise]}`;
}
