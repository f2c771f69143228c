import { useMemo } from "react";
import type { Motion } from "../../../dialing/motion";
import { useAsked } from "../../keeping/useLogbook";
import type { SittingShelf } from "../session/sittingShelf";

type Motions = readonly (Motion | null)[];

/**
 * The motions of a sitting's tries, as far as they are kept.
 *
 * @param shelf - that of the sitting of this page, which has them at once; null to ask the logbook alone
 */
export function useTryMotions(sittingId: string, count: number, shelf: SittingShelf | null): Motions {
  const atHand = useMemo<Motions>(
    () => Array.from({ length: count }, (_, index) => shelf?.motion(index) ?? null),
    [shelf, count],
  );
  const { answer: stored } = useAsked<Motions>(`${sittingId} ${count}`, async () =>
    (await import("../../keeping/keep")).motionsOfSitting(sittingId, count),
  );
  return useMemo(() => atHand.map((motion, index) => motion ?? stored?.[index] ?? null), [atHand, stored]);
}
