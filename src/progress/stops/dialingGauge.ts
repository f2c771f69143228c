import type { AttemptRecord } from "../../records/attemptRecord";
import type { PersonRecord } from "../../records/records";
import { oneWayAnalysis } from "../../statistics/gauge/analysisOfVariance";
import { type GaugeComponents, gaugeComponents } from "../../statistics/gauge/gaugeComponents";
import type { GaugeMeasurements } from "../../statistics/gauge/gaugeMeasurements";
import { type GaugeStudy, gaugeStudy } from "../../statistics/gauge/gaugeStudy";
import { mean } from "../../statistics/sample";
import { StatisticsError } from "../../statistics/statisticsError";
import { nearStops } from "./nearStops";

/** One person's stops that can take part in a study. */
export interface PersonStops {
  readonly person: PersonRecord;
  /** Stop errors at each place studied, graduations, oldest first. */
  readonly stops: readonly (readonly number[])[];
}

/** Who takes part in a study, with how many stops, and who cannot. */
export interface GaugeParticipants {
  /** Places in the combination that are studied, counted from 1. */
  readonly places: readonly number[];
  readonly taking: readonly PersonStops[];
  /** People with fewer than two stops at a place. */
  readonly leftOut: readonly PersonStops[];
  /** Stops of each at each place: the latest ones, as many as the one with fewest has. 0 where nobody takes part. */
  readonly trials: number;
}

/** Repeatability and reproducibility of dialing. */
export interface DialingGauge {
  /** People that took part, in the order of the study's appraisers. */
  readonly people: readonly PersonRecord[];
  /** Numbers in the combination: the study's parts. */
  readonly places: number;
  /** Stops of each person at each place: the latest ones. */
  readonly trials: number;
  readonly components: GaugeComponents;
  /** Mean stop error by place, then by person, graduations. */
  readonly means: readonly (readonly number[])[];
  /** The two-way table behind it; null where one number alone was studied, which leaves no parts. */
  readonly study: GaugeStudy | null;
}

const FEWEST = 2;

/** The most numbers that a combination among attempts has. */
export function placesOf(attempts: readonly Pick<AttemptRecord, "combination">[]): number {
  return attempts.reduce((most, { combination }) => Math.max(most, combination.length), 0);
}

/**
 * Who can take part in a study of dialing, and with how many stops.
 *
 * @param attempts - of one skill, oldest first
 * @param place - the one number to study, counted from 1; null for all
 */
export function gaugeParticipants(
  people: readonly PersonRecord[],
  attempts: readonly AttemptRecord[],
  place: number | null = null,
): GaugeParticipants {
  const places = place === null ? Array.from({ length: placesOf(attempts) }, (_, k) => k + 1) : [place];
  const all = people.map((person): PersonStops => {
    const near = nearStops(attempts.filter(({ personId }) => personId === person.id));
    const errorsAt = (at: number) => near.filter(({ step }) => step === at).map(({ error }) => error);
    return { person, stops: places.map(errorsAt) };
  });
  const isTaking = ({ stops }: PersonStops) => stops.length > 0 && stops.every(({ length }) => length >= FEWEST);
  const taking = all.filter(isTaking);
  const counts = taking.flatMap(({ stops }) => stops.map(({ length }) => length));
  return {
    places,
    taking,
    leftOut: all.filter((one) => !isTaking(one)),
    trials: counts.length === 0 ? 0 : Math.min(...counts),
  };
}

/** Persons apart from one hand, at one number: the two-way study with one part, which leaves no interaction. */
function oneNumber(byPerson: readonly (readonly number[])[], trials: number): GaugeComponents {
  const { between, within } = oneWayAnalysis(byPerson);
  return gaugeComponents({
    equipment: Math.sqrt(within.meanSquare),
    appraiser: Math.sqrt(Math.max(0, between.meanSquare - within.meanSquare) / trials),
    interaction: 0,
    part: 0,
  });
}

function analysisOf(measurements: GaugeMeasurements, trials: number): Pick<DialingGauge, "components" | "study"> {
  const [only = []] = measurements;
  if (measurements.length === 1) return { components: oneNumber(only, trials), study: null };
  const study = gaugeStudy(measurements);
  return { components: study.components, study };
}

/**
 * Gauge study of dialing across people: the person is the appraiser, a place in the combination the part, a stop error
 * (graduations) the measurement.
 *
 * Repeatability is how one hand differs from itself, reproducibility how one person differs from another; the parts'
 * variation is that between first and later numbers, and no tolerance. Who has fewer than two stops at a place is left
 * out, and everyone counts with as many latest stops as the one with fewest. Source: AIAG, Measurement Systems
 * Analysis, 4th ed. (2010), by `statistics/gaugeStudy`; of one number alone by `statistics/analysisOfVariance`, its
 * mean squares set equal to what is expected of them.
 *
 * @param attempts - of one skill, oldest first
 * @param place - the one number to study, counted from 1; null for all
 * @returns the study, or what it lacks: null where too few people take part
 */
export function dialingGauge(
  people: readonly PersonRecord[],
  attempts: readonly AttemptRecord[],
  place: number | null = null,
): DialingGauge | { readonly lacking: StatisticsError | null } {
  const { places, taking, trials } = gaugeParticipants(people, attempts, place);
  if (taking.length < FEWEST) return { lacking: null };
  const measurements: GaugeMeasurements = places.map((_, k) =>
    taking.map(({ stops }) => (stops[k] ?? []).slice(-trials)),
  );
  try {
    return {
      people: taking.map(({ person }) => person),
      places: places.length,
      trials,
      means: measurements.map((byPerson) => byPerson.map(mean)),
      ...analysisOf(measurements, trials),
    };
  } catch (error) {
    if (error instanceof StatisticsError) return { lacking: error };
    throw error;
  }
}
