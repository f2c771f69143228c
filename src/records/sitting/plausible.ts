import type { TryResult } from "../../drill/marking/tryResult";
import { sittingPlan } from "../../drill/sitting/sittingPlan";
import { type Finding, failing, type Problem } from "../../wording/problem";
import { checkProblem, tryProblem } from "./checkWords";
import type { SittingRecord } from "./sittingRecord";
import { tryMisfit } from "./tryPlausible";
import { versionMisfits } from "./versionFields";

/** Try clocks and the sitting's clock are read at different moments, milliseconds. */
const CLOCKS_DIFFER = 1000;

const seconds = (time_ms: number) => (time_ms / 1000).toFixed(1);

const placeOf = ({ station, repetition }: TryResult) => `${station} ${repetition}`;

/** Tries and answers against what the sheet has room for. */
function countMisfits({ sheet, tries, answers, ended, motions }: SittingRecord): readonly Problem[] {
  const plan = sittingPlan(sheet);
  const twice = tries.findIndex((one, k) => tries.findIndex((other) => placeOf(other) === placeOf(one)) < k);
  const asked = answers.map(({ questionId }) => questionId);
  const repeated = asked.find((id, k) => asked.indexOf(id) < k);
  const isWhole = tries.length === plan.tries && answers.length === plan.questions;
  const findings: readonly Finding[] = [
    [tries.length <= plan.tries, checkProblem("too-many-tries", [], { planned: plan.tries, tries: tries.length })],
    [
      answers.length <= plan.questions,
      checkProblem("too-many-answers", [], { planned: plan.questions, answers: answers.length }),
    ],
    [ended !== "finished" || isWhole, checkProblem("not-whole", [])],
    [answers.length === 0 || tries.length === plan.tries, checkProblem("early-answers", [])],
    [twice < 0, tryProblem(twice + 1, checkProblem("place-taken", []))],
    [repeated === undefined, checkProblem("answered-twice", [], { question: repeated })],
    [
      motions === undefined || motions.length === tries.length,
      checkProblem("recording-count", [], { recordings: motions?.length, tries: tries.length }),
    ],
  ];
  return failing(findings);
}

/** The times of a sitting against each other. */
function timeMisfits(record: SittingRecord): readonly Problem[] {
  const { sheet, tries, worked_ms, ended } = record;
  const { timeLimit_ms } = sittingPlan(sheet);
  const inTries = tries.reduce((sum, { time_ms }) => sum + time_ms, 0);
  const isOver = timeLimit_ms !== null && worked_ms > timeLimit_ms + CLOCKS_DIFFER;
  const findings: readonly Finding[] = [
    [
      inTries <= worked_ms + CLOCKS_DIFFER,
      checkProblem("tries-too-long", [], { tries: seconds(inTries), whole: seconds(worked_ms) }),
    ],
    [
      ended !== "finished" || !isOver,
      checkProblem("over-time", [], { worked: seconds(worked_ms), limit: seconds(timeLimit_ms ?? 0) }),
    ],
    [
      ended !== "time" || worked_ms + CLOCKS_DIFFER >= (timeLimit_ms ?? 0),
      checkProblem("time-not-up", [], { worked: seconds(worked_ms), limit: seconds(timeLimit_ms ?? 0) }),
    ],
  ];
  return failing(findings);
}

/** Pauses and reloads as they are listed, against their counts and the time worked. */
function breakMisfits({
  breaks,
  clockJumps = [],
  pauses,
  interruptions,
  worked_ms,
}: SittingRecord): readonly Problem[] {
  const moments = [...(breaks ?? []), ...clockJumps].map(({ at_ms }) => at_ms);
  const countOf = (kind: "pause" | "reload") => (breaks ?? []).filter((one) => one.kind === kind).length;
  const isRising = (breaks ?? []).every(({ at_ms }, k, all) => at_ms >= (all[k - 1]?.at_ms ?? 0));
  const isLengthKnown = (breaks ?? []).every(({ at_ms, length_ms }) => length_ms !== null || at_ms === 0);
  const findings: readonly Finding[] = [
    [
      breaks === undefined || countOf("pause") === pauses,
      checkProblem("pause-count", [], { pauses, listed: countOf("pause") }),
    ],
    [
      breaks === undefined || countOf("reload") === interruptions,
      checkProblem("reload-count", [], { reloads: interruptions, listed: countOf("reload") }),
    ],
    [isLengthKnown, checkProblem("break-without-length", [])],
    [isRising, checkProblem("breaks-out-of-order", [])],
    [moments.every((at) => at <= worked_ms + CLOCKS_DIFFER), checkProblem("break-after-end", [])],
  ];
  return failing(findings);
}

/** Every try that cannot have been. */
function tryMisfits({ sheet, tries }: SittingRecord): readonly Problem[] {
  return tries.flatMap((one, k) => {
    const station = sheet.stations[one.station];
    const misfit = station === undefined ? checkProblem("no-station", []) : tryMisfit(one, station);
    return misfit === undefined ? [] : [tryProblem(k + 1, misfit)];
  });
}

/**
 * What cannot be in a record, whatever version made it: counts beyond the sheet's plan, times that do not add up, an
 * opening with stops outside the lock's tolerance, and so on.
 *
 * @returns none where all of it is possible
 */
export function implausible(record: SittingRecord): readonly Problem[] {
  return [
    ...versionMisfits(record),
    ...countMisfits(record),
    ...timeMisfits(record),
    ...breakMisfits(record),
    ...tryMisfits(record),
  ];
}
