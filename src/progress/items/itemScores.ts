import { isRight } from "../../drill/marking/tryResult";
import type { SittingRecord } from "../../records/sitting/sittingRecord";
import type { ItemScore } from "./itemAnalysis";

/** What one sitting came to at each of its questions. */
export const questionScores = ({ answers }: Pick<SittingRecord, "answers">): ItemScore[] =>
  answers.map(({ questionId, isRight: right }) => ({ item: questionId, score: right ? 1 : 0 }));

/** Share of right tries at each station that a sitting came to: of all its repetitions, for a try not made is none that is right. */
export function stationScores({ sheet, tries }: Pick<SittingRecord, "sheet" | "tries">): ItemScore[] {
  return sheet.stations.flatMap((station, index) => {
    const made = tries.filter((one) => one.station === index);
    if (made.length === 0) return [];
    return [{ item: station.id, score: made.filter((one) => isRight(one, station)).length / station.repetitions }];
  });
}
