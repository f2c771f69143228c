import { mustHold } from "../statisticsError";

/** Where the variation of a gauge study comes from: standard deviations, in the unit of the measurements. */
export interface GaugeSources {
  /** Repeatability: the same person on the same part again. */
  readonly equipment: number;
  /** One person against another. */
  readonly appraiser: number;
  /** Persons who differ from part to part; 0 where it is pooled or not told apart. */
  readonly interaction: number;
  readonly part: number;
}

/** The sources with what they add up to. Standard deviations add by their squares. */
export interface GaugeComponents extends GaugeSources {
  /** Gauge repeatability and reproducibility: all but the parts. */
  readonly gauge: number;
  readonly total: number;
}

/** Categories by 97 % intervals: the square root of 2, as AIAG rounds it. */
const CATEGORY_FACTOR = 1.41;

/**
 * Adds sources of variation up.
 *
 * Source: AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter III, section B.
 *
 * @param sources - standard deviations, one unit, >= 0
 * @returns same unit
 * @throws {StatisticsError} `no-spread` if nothing varies at all
 */
export function gaugeComponents(sources: GaugeSources): GaugeComponents {
  const gauge = Math.hypot(sources.equipment, sources.appraiser, sources.interaction);
  const total = Math.hypot(gauge, sources.part);
  mustHold(total !== 0, "no-spread");
  return { ...sources, gauge, total };
}

/**
 * Share of the study variation that one component has.
 *
 * The shares of all components add up to more than 1: their squares do not. Source: AIAG (2010), chapter III.
 *
 * @param components - of one study
 * @param name - which component
 * @returns in [0, 1]
 */
export function studyShare(components: GaugeComponents, name: keyof GaugeComponents): number {
  return components[name] / components.total;
}

/**
 * Share of the variance that one component contributes.
 *
 * @param components - of one study
 * @param name - which component
 * @returns in [0, 1]; equipment, appraiser, interaction and part add up to 1
 */
export function contributionShare(components: GaugeComponents, name: keyof GaugeComponents): number {
  return studyShare(components, name) ** 2;
}

/**
 * How many groups of parts the gauge can tell apart, before it is cut to a whole number (5 or more is wanted).
 *
 * Source: AIAG (2010), chapter III: 1.41 PV / GRR.
 *
 * @param components - of one study
 * @returns >= 0; infinite for a gauge that does not vary
 */
export function distinctCategories(components: GaugeComponents): number {
  return (CATEGORY_FACTOR * components.part) / components.gauge;
}
