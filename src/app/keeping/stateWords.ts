import type { LogbookWrite } from "../../store/logbookWrite";
import { countText } from "../../wording/amountWords";

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
  kept: "The browser has promised not to delete them.",
  refused: "The browser may delete them when it needs room: save the whole logbook as a file now and then.",
  unknown: "This browser cannot promise to keep them: save the whole logbook as a file now and then.",
} as const;

/** How many records wait: a person who comes along with a record is none. */
export const waitingCount = (pending: readonly LogbookWrite[]): number =>
  pending.filter((write) => write.kind !== "people" || write.only === undefined).length;

/** Where the records are and how safe, in one or two sentences. */
export function keepingWords({ pending, problem, promise }: KeepingState): string {
  const waiting = pending === 0 ? "" : `${countText(pending, "record waits", "records wait")} in this tab. `;
  if (problem !== null) return `${waiting}${problem}`;
  const here = "All records are saved in this browser, on this device only.";
  return promise === null ? here : `${here} ${PROMISES[promise]}`;
}
