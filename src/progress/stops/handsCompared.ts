import type { Graduations } from "../../lock/dial";
import { type Hand, handOf } from "../../realdial/sources/handOf";
import { handsOf } from "../../realdial/sources/handsOf";
import { isCoarselyTurned } from "../../realdial/sources/isCoarselyTurned";
import type { AttemptRecord } from "../../records/attemptRecord";
import { sampleSummary } from "../../statistics/sample";
import { type DifferenceOfMeans, welchInterval } from "../../statistics/welchInterval";
import { type FirstTimeOpenings, firstTimeOpenings } from "./firstTimeOpenings";
import { judgedStopsOf } from "./nearStops";
import { worstStop } from "./worstStop";

/** What the attempts of one hand come to. */
export interface HandFigures {
  readonly hand: Hand;
  readonly openings: FirstTimeOpenings;
  /** Whether all of them were turned in coarse steps: then its stops are not judged. */
  readonly isCoarse: boolean;
  /**
   * Mean size of the worst stop less that on the screen, 95 % (Welch), graduations; null for the screen itself, and where
   * either has fewer than two attempts with stops.
   */
  readonly worstStopMore: DifferenceOfMeans | null;
}

type Dialed = Pick<AttemptRecord, "opened" | "isLate" | "isNotAdmitted" | "stops" | "sources">;

const worstStops = (attempts: readonly Dialed[]): Graduations[] =>
  attempts.flatMap((attempt) => worstStop(judgedStopsOf(attempt)) ?? []);

/** Each hand beside the one on the screen: whether what was learned there carries over. @param attempts - oldest first */
export function handsCompared(attempts: readonly Dialed[]): HandFigures[] {
  const of = (hand: Hand) => attempts.filter((one) => handOf(one) === hand);
  const onScreen = worstStops(of("screen"));
  return handsOf(attempts).flatMap((hand) => {
    const own = of(hand);
    const openings = firstTimeOpenings(own);
    const worst = worstStops(own);
    const canTell = hand !== "screen" && worst.length > 1 && onScreen.length > 1;
    const worstStopMore = canTell ? welchInterval(sampleSummary(worst), sampleSummary(onScreen)) : null;
    return openings === null ? [] : [{ hand, openings, isCoarse: own.every(isCoarselyTurned), worstStopMore }];
  });
}
