import { capital } from "../../../dialing/words";
import { acceptedWords, refusalWords } from "../../../zeroing/zeroWords";
import type { ZeroingSession } from "./session/zeroingSession";

/** What came of the last reading, in one sentence; empty before the first. */
export function lastWords({ setup, memory }: ZeroingSession): string {
  const { last } = memory;
  if (last === null) return "";
  const { side, refusal, deviation, accepted } = last;
  if (refusal !== null) return `Not counted. ${refusalWords(refusal, side, setup.rules, deviation)}`;
  const words = acceptedWords(side, accepted, Math.min(memory.wanted[side], setup.rules.wanted), deviation);
  return `${capital(words)}.`;
}
