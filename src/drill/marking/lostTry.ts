import type { PlannedTry } from "../sheet/planTries";
import type { Station } from "../sheet/sheet";
import type { TryResult } from "./tryResult";

/** What a try comes to that a reload or a crash took away: made, and not right. */
export function lostTry({ kind }: Pick<Station, "kind">, { station, repetition, combination }: PlannedTry): TryResult {
  const lost = { station, repetition, time_ms: 0, isBrokenOff: true };
  const numbers = combination ?? [];
  switch (kind) {
    case "dialing":
      return { ...lost, kind, combination: numbers, opened: false, stopErrors: numbers.map(() => null), faults: [] };
    case "zeroing":
      return { ...lost, kind, verdicts: { left: null, right: null }, means: { left: null, right: null }, refused: 0 };
    case "change":
      return { ...lost, kind, combination: numbers, outcome: "unchanged", proofs: 0, faults: [] };
    case "trouble":
      return {
        ...lost,
        kind,
        condition: null,
        named: null,
        isNamedRight: false,
        sizeError: null,
        tries: 0,
        measurements: 0,
      };
    case "handover":
      return { ...lost, kind, isHandedOver: false, missing: [], faults: [], undone: 0 };
    case "fitting":
      return { ...lost, kind, declared: null, faults: [], skipped: [], moves: 0, spindlesUsed: 0 };
    case "service":
      return { ...lost, kind, isLeft: false, conditions: [], found: [], faults: [], acts: 0 };
    case "inspection":
      return { ...lost, kind, faults: [], named: null, skipped: [] };
  }
}
