import { trialsToShow } from "../../statistics/claim";
import { type Problem, under } from "../../wording/problem";
import { drillProblem } from "../drillWords";
import type { DialingStation, Sheet, Station } from "./sheet";

/** A mean, or a spread, is judged by an interval, and one try has none. */
const LEAST_FOR_INTERVAL = 2;

const claimDoubts = ({ passMarks, repetitions }: DialingStation): Problem[] => {
  const { claim, firstTime } = passMarks;
  if (claim === undefined) return [];
  const needed = trialsToShow(claim, 0);
  if (needed > repetitions)
    return [drillProblem("claim-needs-more", ["passMarks", "claim", "rate"], { repetitions, needed, ...claim })];
  const misses = repetitions - (firstTime ?? repetitions);
  if (misses === 0 || trialsToShow(claim, misses) <= repetitions) return [];
  return [drillProblem("marks-contradict", ["passMarks", "firstTime"], { firstTime, repetitions, ...claim })];
};

const stopDoubts = ({ passMarks, repetitions }: DialingStation): Problem[] =>
  (["stopErrorBias", "stopErrorSpread"] as const).flatMap((mark) => {
    const limit = passMarks[mark];
    if (limit === undefined) return [];
    if (limit === 0) return [drillProblem("no-hand-so-exact", ["passMarks", mark])];
    return repetitions < LEAST_FOR_INTERVAL ? [drillProblem("one-try-no-interval", ["passMarks", mark])] : [];
  });

const timeDoubts = ({ passMarks, timeLimit_s, repetitions }: Station): Problem[] => {
  const { meanTime_s } = passMarks;
  if (meanTime_s === undefined || timeLimit_s === undefined || meanTime_s < timeLimit_s || repetitions === 0) return [];
  return [drillProblem("limit-comes-first", ["passMarks", "meanTime_s"], { limit: timeLimit_s })];
};

/** A mark of faultless work that another mark asks more of. */
const faultDoubts = ({ repetitions, passMarks }: Station): Problem[] => {
  const faults = "faultyTries" in passMarks ? passMarks.faultyTries : undefined;
  return faults === repetitions ? [drillProblem("every-try-faulty", ["passMarks", "faultyTries"])] : [];
};

const sizeDoubts = (station: Station): Problem[] =>
  station.kind === "trouble" && station.passMarks.sizeError === 0
    ? [drillProblem("no-size-so-exact", ["passMarks", "sizeError"])]
    : [];

const helpDoubts = ({ help }: Station, isTest: boolean): Problem[] =>
  isTest && help === "full" ? [drillProblem("full-help-in-test", ["help"])] : [];

function stationDoubts(station: Station, isTest: boolean): Problem[] {
  return [
    ...helpDoubts(station, isTest),
    ...(station.kind === "dialing" ? [...claimDoubts(station), ...stopDoubts(station)] : []),
    ...faultDoubts(station),
    ...sizeDoubts(station),
    ...timeDoubts(station),
  ];
}

/** Seconds that even a quick hand needs for a try: three numbers take some nine turns. A training value, no source. */
const LEAST_TRY_S = 5;

function wholeTimeDoubts({ sitting, stations }: Sheet): Problem[] {
  const limit = sitting?.timeLimit_s;
  const tries = stations.reduce((sum, { repetitions }) => sum + repetitions, 0);
  if (limit === undefined || limit >= tries * LEAST_TRY_S) return [];
  const values = { limit, tries, least: LEAST_TRY_S };
  return [drillProblem("time-too-short", ["sitting", "timeLimit_s"], values)];
}

/**
 * Marks of a sound sheet that cannot be reached, cannot be missed or contradict each other, and help that a test hardly has.
 *
 * Claims are judged as the sitting judges them: by one-sided Clopper-Pearson bounds.
 *
 * @returns none for a sheet that asks what can be shown
 */
export function markDoubts(sheet: Sheet): Problem[] {
  const isTest = sheet.sitting !== undefined;
  const each = sheet.stations.flatMap((station, index) =>
    stationDoubts(station, isTest).map((doubt) => under(["stations", index], doubt)),
  );
  return [...each, ...wholeTimeDoubts(sheet)];
}
