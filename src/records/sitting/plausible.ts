import type { TryResult } from "../../drill/marking/tryResult";
import { sittingPlan } from "../../drill/sittingPlan";
import type { SittingRecord } from "./sittingRecord";
import { tryMisfit } from "./tryPlausible";
import { versionMisfits } from "./versionFields";

/** Try clocks and the sitting's clock are read at different moments, milliseconds. */
const CLOCKS_DIFFER = 1000;

const seconds = (time_ms: number) => `${(time_ms / 1000).toFixed(1)} s`;

const placeOf = ({ station, repetition }: TryResult) => `${station} ${repetition}`;

/** Tries and answers against what the sheet has room for. */
function countMisfits({ sheet, tries, answers, ended, motions }: SittingRecord): readonly string[] {
  const plan = sittingPlan(sheet);
  const twice = tries.findIndex((one, k) => tries.findIndex((other) => placeOf(other) === placeOf(one)) < k);
  const asked = answers.map(({ questionId }) => questionId);
  const repeated = asked.find((id, k) => asked.indexOf(id) < k);
  const isWhole = tries.length === plan.tries && answers.length === plan.questions;
  const findings: readonly (readonly [boolean, string])[] = [
    [tries.length <= plan.tries, `The sheet has ${plan.tries} tries, and ${tries.length} are on record.`],
    [
      answers.length <= plan.questions,
      `The sheet asks ${plan.questions} questions, and ${answers.length} answers are on record.`,
    ],
    [ended !== "finished" || isWhole, "It is recorded as finished, and not all of its tries and answers are there."],
    [
      answers.length === 0 || tries.length === plan.tries,
      "There are answers on record, and questions come only after the last try.",
    ],
    [twice < 0, `Try ${twice + 1} is at the place of an earlier one.`],
    [repeated === undefined, `Question "${repeated}" is answered twice.`],
    [
      motions === undefined || motions.length === tries.length,
      `It holds ${motions?.length} recordings for ${tries.length} tries; there must be one place for each.`,
    ],
  ];
  return findings.flatMap(([isFine, says]) => (isFine ? [] : [says]));
}

/** The times of a sitting against each other. */
function timeMisfits(record: SittingRecord): readonly string[] {
  const { sheet, tries, worked_ms, ended } = record;
  const { timeLimit_ms } = sittingPlan(sheet);
  const inTries = tries.reduce((sum, { time_ms }) => sum + time_ms, 0);
  const isOver = timeLimit_ms !== null && worked_ms > timeLimit_ms + CLOCKS_DIFFER;
  const findings: readonly (readonly [boolean, string])[] = [
    [
      inTries <= worked_ms + CLOCKS_DIFFER,
      `The tries took ${seconds(inTries)} together, and the whole sitting ${seconds(worked_ms)}.`,
    ],
    [
      ended !== "finished" || !isOver,
      `It was finished after ${seconds(worked_ms)}, and the sheet allows ${seconds(timeLimit_ms ?? 0)}.`,
    ],
    [
      ended !== "time" || worked_ms + CLOCKS_DIFFER >= (timeLimit_ms ?? 0),
      `It ended because time was up, after ${seconds(worked_ms)} of ${seconds(timeLimit_ms ?? 0)}.`,
    ],
  ];
  return findings.flatMap(([isFine, says]) => (isFine ? [] : [says]));
}

/** Pauses and reloads as they are listed, against their counts and the time worked. */
function breakMisfits({ breaks, clockJumps = [], pauses, interruptions, worked_ms }: SittingRecord): readonly string[] {
  const moments = [...(breaks ?? []), ...clockJumps].map(({ at_ms }) => at_ms);
  const countOf = (kind: "pause" | "reload") => (breaks ?? []).filter((one) => one.kind === kind).length;
  const isRising = (breaks ?? []).every(({ at_ms }, k, all) => at_ms >= (all[k - 1]?.at_ms ?? 0));
  const isLengthKnown = (breaks ?? []).every(({ at_ms, length_ms }) => length_ms !== null || at_ms === 0);
  const findings: readonly (readonly [boolean, string])[] = [
    [
      breaks === undefined || countOf("pause") === pauses,
      `Pauses on record: ${pauses}; pauses listed with their lengths: ${countOf("pause")}.`,
    ],
    [
      breaks === undefined || countOf("reload") === interruptions,
      `Reloads on record: ${interruptions}; reloads listed with their lengths: ${countOf("reload")}.`,
    ],
    [isLengthKnown, "A pause or reload has no length, and it is not one that version 0.2.0 counted."],
    [isRising, "The pauses and reloads are not in the order of their times."],
    [moments.every((at) => at <= worked_ms + CLOCKS_DIFFER), "A pause, reload or clock change lies after the end."],
  ];
  return findings.flatMap(([isFine, says]) => (isFine ? [] : [says]));
}

/** Every try that cannot have been. */
function tryMisfits({ sheet, tries }: SittingRecord): readonly string[] {
  return tries.flatMap((one, k) => {
    const station = sheet.stations[one.station];
    const misfit = station === undefined ? "is at a station that the sheet does not have" : tryMisfit(one, station);
    return misfit === undefined ? [] : [`Try ${k + 1} ${misfit}.`];
  });
}

/**
 * What cannot be in a record, whatever version made it: counts beyond the sheet's plan, times that do not add up, an
 * opening with stops outside the lock's tolerance, and so on.
 *
 * @returns sentences; none where all of it is possible
 */
export function implausible(record: SittingRecord): readonly string[] {
  return [
    ...versionMisfits(record),
    ...countMisfits(record),
    ...timeMisfits(record),
    ...breakMisfits(record),
    ...tryMisfits(record),
  ];
}
