import type { Hand } from "../../realdial/sources/handOf";
import { type CsvColumn, csvOf, fixed } from "../../records/csv/csvText";
import type { Skill } from "../../records/skill";
import {
  contributionShare,
  distinctCategories,
  type GaugeSources,
  studyShare,
} from "../../statistics/gauge/gaugeComponents";
import type { DialingGauge } from "../stops/dialingGauge";

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

interface Row {
  readonly skill: Skill;
  readonly place: number | null;
  readonly gauge: DialingGauge;
  readonly source: GaugeSource;
  readonly hand: Hand;
}

const DECIMALS = 6;

/** Columns of the file of a gauge study. */
export const GAUGE_COLUMNS: readonly CsvColumn<Row>[] = [
  { name: "profile", meaning: "id of the kind of lock", cell: ({ skill }) => skill.profileId },
  { name: "exercise", meaning: "what was practiced", cell: ({ skill }) => skill.exercise },
  {
    name: "numbers",
    meaning: "places in the combination that were studied",
    cell: ({ place, gauge }) => (place === null ? `1 to ${gauge.places}` : String(place)),
  },
  { name: "people", meaning: "people studied", cell: ({ gauge }) => gauge.people.length },
  { name: "stops_each", meaning: "stops of each person at each number", cell: ({ gauge }) => gauge.trials },
  {
    name: "source",
    meaning:
      "source of variation: equipment is one hand again, appraiser is person to person, part is number to number",
    cell: ({ source }) => source,
  },
  {
    name: "standard_deviation",
    unit: "graduations",
    meaning: "standard deviation from this source",
    cell: ({ gauge, source }) => fixed(gauge.components[source], DECIMALS),
  },
  {
    name: "study_variation_6sd",
    unit: "graduations",
    meaning: "6 standard deviations",
    cell: ({ gauge, source }) => fixed(STUDY_WIDTH * gauge.components[source], DECIMALS),
  },
  {
    name: "contribution",
    unit: "0 to 1",
    meaning: "share of the variance",
    cell: ({ gauge, source }) => fixed(contributionShare(gauge.components, source), DECIMALS),
  },
  {
    name: "study_share",
    unit: "0 to 1",
    meaning: "share of the standard deviation",
    cell: ({ gauge, source }) => fixed(studyShare(gauge.components, source), DECIMALS),
  },
  {
    name: "distinct_categories",
    meaning: "groups of numbers that the stops tell apart",
    cell: ({ gauge }) => categoriesOf(gauge),
  },
  {
    name: "interaction_p",
    unit: "0 to 1",
    meaning: "p of the interaction of person and number",
    cell: ({ gauge: { study } }) => (study === null ? null : fixed(study.interactionRatio.p, DECIMALS)),
  },
  {
    name: "interaction_pooled",
    unit: "1 yes, 0 no",
    meaning: "whether the interaction was counted as chance",
    cell: ({ gauge: { study } }) => (study === null ? null : Number(study.wasPooled)),
  },
  { name: "turned_by", meaning: "what turned the dial: no study mixes two hands", cell: ({ hand }) => hand },
];

/**
 * A gauge study as CSV, one source of variation a row.
 *
 * @param place - the one number that was studied, counted from 1; null for all
 * @param hand - that turned the dial
 */
export const gaugeCsv = (skill: Skill, place: number | null, gauge: DialingGauge, hand: Hand): string =>
  csvOf(
    GAUGE_COLUMNS,
    sourcesOf(gauge).map((source) => ({ skill, place, gauge, source, hand })),
  );
