import { contributionShare, distinctCategories, type GaugeSources, studyShare } from "../statistics/gaugeComponents";
import { type CsvCell, csvText } from "./csvText";
import type { DialingGauge } from "./dialingGauge";
import type { Skill } from "./skill";

/** A source of variation in a study of dialing. */
export type GaugeSource = keyof GaugeSources | "gauge" | "total";

const SOURCES: readonly GaugeSource[] = ["gauge", "equipment", "appraiser", "interaction", "part", "total"];

/** Standard deviations that a study's variation is told as. Source: AIAG (2010), chapter III: 6. */
export const STUDY_WIDTH = 6;

/** The sources that a study told apart: without parts there is nothing between them and people. */
export function sourcesOf({ study }: DialingGauge): readonly GaugeSource[] {
  return study === null ? SOURCES.filter((one) => one !== "interaction" && one !== "part") : SOURCES;
}

/**
 * Groups of numbers that the stops can tell apart, cut to a whole number.
 *
 * @returns at least 1, as AIAG counts; null where one number alone was studied, or where no hand varies
 */
export function categoriesOf({ components, study }: DialingGauge): number | null {
  const categories = distinctCategories(components);
  return study === null || !Number.isFinite(categories) ? null : Math.max(1, Math.floor(categories));
}

const HEADER = [
  "profile",
  "exercise",
  "numbers",
  "people",
  "stops_each",
  "source",
  "standard_deviation",
  "study_variation_6sd",
  "contribution",
  "study_share",
  "distinct_categories",
  "interaction_p",
  "interaction_pooled",
];

const fixed = (value: number) => Number(value.toFixed(6));

/**
 * A gauge study as CSV, one source of variation a row; deviations in graduations, shares in [0, 1].
 *
 * @param place - the one number that was studied, counted from 1; null for all
 */
export function gaugeCsv({ profileId, exercise }: Skill, place: number | null, gauge: DialingGauge): string {
  const { components, study, people, trials, places } = gauge;
  const rows = sourcesOf(gauge).map((source): CsvCell[] => [
    profileId,
    exercise,
    place === null ? `1 to ${places}` : String(place),
    people.length,
    trials,
    source,
    fixed(components[source]),
    fixed(STUDY_WIDTH * components[source]),
    fixed(contributionShare(components, source)),
    fixed(studyShare(components, source)),
    categoriesOf(gauge),
    study === null ? null : fixed(study.interactionRatio.p),
    study === null ? null : Number(study.wasPooled),
  ]);
  return csvText(HEADER, rows);
}
