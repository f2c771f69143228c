import type { Sheet, SittingRules, Station } from "../../drill/sheet/sheet";

/** Most extra time, percent. */
export const MOST_EXTRA_TIME = 300;

/** Longest time that a sheet can name, seconds. */
const LONGEST_S = 36_000;

const longer = (time_s: number | undefined, percent: number): number | undefined =>
  time_s === undefined ? undefined : Math.min(LONGEST_S, Math.ceil((time_s * (100 + percent)) / 100));

/** The same object with a time in it lengthened; one that it does not name stays unnamed. */
const lengthened = <Part extends object, Key extends keyof Part>(part: Part, key: Key, percent: number): Part => {
  const time_s = part[key];
  return typeof time_s === "number" ? { ...part, [key]: longer(time_s, percent) } : part;
};

function stationWith(station: Station, percent: number): Station {
  const passMarks = lengthened(station.passMarks, "meanTime_s", percent);
  return { ...lengthened(station, "timeLimit_s", percent), passMarks } as Station;
}

/**
 * A sheet for somebody who needs more time: every time in it is longer, and nothing else is changed. These are the longest
 * time of a try, the longest mean time that a station passes, and the longest time of the whole sitting; each is rounded up
 * to a whole second.
 *
 * @param percent - more time than others have, a whole number in [0, 300]; at 0 the sheet is as it was
 */
export function withExtraTime(sheet: Sheet, percent: number): Sheet {
  if (percent === 0) return sheet;
  const sitting: SittingRules | undefined =
    sheet.sitting === undefined ? undefined : lengthened(sheet.sitting, "timeLimit_s", percent);
  return {
    ...sheet,
    stations: sheet.stations.map((station) => stationWith(station, percent)),
    ...(sitting !== undefined && { sitting }),
  };
}
