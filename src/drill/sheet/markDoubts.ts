import { countText } from "../../lock/amountWords";
import { claimText, trialsToShow } from "../marking/claim";
import type { DialingStation, Sheet, Station } from "./sheet";

/** What an instructor hardly means, beside the field that asks it. */
export interface PlacedDoubt {
  /** Path of the field in the sheet, such as `stations[0].passMarks.claim`. */
  readonly path: string;
  /** A sentence. */
  readonly says: string;
}

type Doubt = readonly [field: string, says: string];

const times = (count: number) => countText(count, "try", "tries");

/** A mean, or a spread, is judged by an interval, and one try has none. */
const LEAST_FOR_INTERVAL = 2;

const claimDoubts = ({ passMarks, repetitions }: DialingStation): Doubt[] => {
  const { claim, firstTime } = passMarks;
  if (claim === undefined) return [];
  const needed = trialsToShow(claim, 0);
  if (needed > repetitions) {
    const says = `Cannot be reached: ${repetitions} of ${repetitions} do not show ${claimText(claim)}. It takes at least ${times(needed)}.`;
    return [["passMarks.claim.rate", says]];
  }
  const misses = repetitions - (firstTime ?? repetitions);
  if (misses === 0 || trialsToShow(claim, misses) <= repetitions) return [];
  const says = `The marks contradict each other: ${firstTime} of ${repetitions} passes here, but does not show ${claimText(claim)}.`;
  return [["passMarks.firstTime", says]];
};

const stopDoubts = ({ passMarks, repetitions }: DialingStation): Doubt[] =>
  (["stopErrorBias", "stopErrorSpread"] as const).flatMap((mark): Doubt[] => {
    const limit = passMarks[mark];
    if (limit === undefined) return [];
    if (limit === 0) return [[`passMarks.${mark}`, "Cannot be reached: no hand stops without any error."]];
    const isShort = repetitions < LEAST_FOR_INTERVAL;
    return isShort ? [[`passMarks.${mark}`, "Cannot be reached with 1 try: it takes at least 2 tries."]] : [];
  });

const timeDoubts = ({ passMarks, timeLimit_s, repetitions }: Station): Doubt[] => {
  const { meanTime_s } = passMarks;
  if (meanTime_s === undefined || timeLimit_s === undefined || meanTime_s < timeLimit_s || repetitions === 0) return [];
  return [["passMarks.meanTime_s", `Cannot be missed: a try ends after ${timeLimit_s} s.`]];
};

/** A mark of faultless work that another mark asks more of. */
const faultDoubts = (station: Station): Doubt[] => {
  const { repetitions, passMarks } = station;
  const faults = "faultyTries" in passMarks ? passMarks.faultyTries : undefined;
  return faults === repetitions ? [["passMarks.faultyTries", "Cannot be missed: every try may have a fault."]] : [];
};

const sizeDoubts = (station: Station): Doubt[] =>
  station.kind === "trouble" && station.passMarks.sizeError === 0
    ? [["passMarks.sizeError", "Cannot be reached: no size is measured without any error."]]
    : [];

const helpDoubts = ({ help }: Station, isTest: boolean): Doubt[] =>
  isTest && help === "full"
    ? [["help", "Full help in a test is unusual: it shows the next step and every stop error."]]
    : [];

function stationDoubts(station: Station, isTest: boolean): Doubt[] {
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

function wholeTimeDoubts({ sitting, stations }: Sheet): PlacedDoubt[] {
  const limit = sitting?.timeLimit_s;
  const tries = stations.reduce((sum, { repetitions }) => sum + repetitions, 0);
  if (limit === undefined || limit >= tries * LEAST_TRY_S) return [];
  const says = `Hardly to be done: ${limit} s for ${times(tries)} leave less than ${LEAST_TRY_S} s for each.`;
  return [{ path: "sitting.timeLimit_s", says }];
}

/**
 * Marks of a sound sheet that cannot be reached, cannot be missed or contradict each other, and help that a test hardly has.
 *
 * Claims are judged as the sitting judges them: by one-sided Clopper-Pearson bounds.
 *
 * @returns sentences with the field they belong to; none for a sheet that asks what can be shown
 */
export function markDoubts(sheet: Sheet): PlacedDoubt[] {
  const isTest = sheet.sitting !== undefined;
  const each = sheet.stations.flatMap((station, index) =>
    stationDoubts(station, isTest).map(([field, says]) => ({ path: `stations[${index}].${field}`, says })),
  );
  return [...each, ...wholeTimeDoubts(sheet)];
}
