import { compensatedSum } from "../compensatedSum";
import { mean, sumOfSquaredDeviations } from "../sample";
import { mustLieIn } from "../statisticsError";
import { type VarianceLine, type VarianceRatio, varianceLine, varianceRatio } from "./analysisOfVariance";
import { type GaugeComponents, gaugeComponents } from "./gaugeComponents";
import { type GaugeMeasurements, type GaugeSize, gaugeSize, measurementsBy } from "./gaugeMeasurements";

/** The lines of the two-way table with interaction, in the unit of the measurements squared. */
export interface GaugeTable {
  readonly part: VarianceLine;
  readonly appraiser: VarianceLine;
  readonly interaction: VarianceLine;
  readonly equipment: VarianceLine;
  readonly total: VarianceLine;
}

/** A crossed gauge study by analysis of variance. */
export interface GaugeStudy {
  readonly table: GaugeTable;
  /** Parts against the interaction. */
  readonly partRatio: VarianceRatio;
  /** Appraisers against the interaction. */
  readonly appraiserRatio: VarianceRatio;
  /** Interaction against the equipment. */
  readonly interactionRatio: VarianceRatio;
  /** Whether the interaction was counted as chance. */
  readonly wasPooled: boolean;
  readonly components: GaugeComponents;
}

/** Level above which the interaction is taken for chance. AIAG (2010) pools from 0.25 on. */
const USUAL_POOLING_LEVEL = 0.25;

function gaugeTable(measurements: GaugeMeasurements, { parts, appraisers, trials }: GaugeSize): GaugeTable {
  const all = measurements.flat(2);
  const grand = mean(all);
  const partMeans = measurements.map((part) => mean(part.flat()));
  const appraiserMeans = Array.from({ length: appraisers }, (_, j) => mean(measurementsBy(measurements, j)));
  const interactions = measurements.flatMap((part, i) =>
    part.map((cell, j) => (mean(cell) - (partMeans[i] ?? grand) - (appraiserMeans[j] ?? grand) + grand) ** 2),
  );
  return {
    part: varianceLine(appraisers * trials * sumOfSquaredDeviations(partMeans), parts - 1),
    appraiser: varianceLine(parts * trials * sumOfSquaredDeviations(appraiserMeans), appraisers - 1),
    interaction: varianceLine(trials * compensatedSum(interactions), (parts - 1) * (appraisers - 1)),
    equipment: varianceLine(
      compensatedSum(measurements.flat().map(sumOfSquaredDeviations)),
      parts * appraisers * (trials - 1),
    ),
    total: varianceLine(sumOfSquaredDeviations(all), all.length - 1),
  };
}

/** Standard deviation of an effect: what its mean square has above chance, for each measurement in one mean. */
const effect = (line: VarianceLine, chance: VarianceLine, measurementsPerMean: number) =>
  Math.sqrt(Math.max(0, line.meanSquare - chance.meanSquare) / measurementsPerMean);

function pooledChance({ interaction, equipment }: GaugeTable): VarianceLine {
  return varianceLine(
    interaction.sumOfSquares + equipment.sumOfSquares,
    interaction.degreesOfFreedom + equipment.degreesOfFreedom,
  );
}

function componentsOf(table: GaugeTable, size: GaugeSize, isPooled: boolean): GaugeComponents {
  const chance = isPooled ? pooledChance(table) : table.equipment;
  const base = isPooled ? chance : table.interaction;
  return gaugeComponents({
    equipment: Math.sqrt(chance.meanSquare),
    appraiser: effect(table.appraiser, base, size.parts * size.trials),
    interaction: isPooled ? 0 : effect(table.interaction, table.equipment, size.trials),
    part: effect(table.part, base, size.appraisers * size.trials),
  });
}

/**
 * Crossed gauge study by analysis of variance, all effects random.
 *
 * An interaction that chance explains (p above the pooling level) is pooled with the equipment; a variance that comes
 * out negative counts as 0. Source: AIAG, Measurement Systems Analysis, 4th ed. (2010), appendix A.
 *
 * @param measurements - `[part][appraiser][trial]`, at least 2 of each, one unit
 * @param poolingLevel - in [0, 1]; 1 never pools, 0 pools unless p is 0
 * @returns table, ratios and components; standard deviations in the unit of the measurements
 * @throws {StatisticsError} `unbalanced`, `empty-sample`, `too-few-values` or `not-finite` for what is no crossed study,
 *   `no-spread` if nothing varies, `bad-level` for a pooling level outside [0, 1]
 */
export function gaugeStudy(measurements: GaugeMeasurements, poolingLevel = USUAL_POOLING_LEVEL): GaugeStudy {
  mustLieIn("[0, 1]", "poolingLevel", poolingLevel, poolingLevel >= 0 && poolingLevel <= 1, "bad-level");
  const size = gaugeSize(measurements);
  const table = gaugeTable(measurements, size);
  const interactionRatio = varianceRatio(table.interaction, table.equipment);
  const wasPooled = interactionRatio.p > poolingLevel;
  return {
    table,
    partRatio: varianceRatio(table.part, table.interaction),
    appraiserRatio: varianceRatio(table.appraiser, table.interaction),
    interactionRatio,
    wasPooled,
    components: componentsOf(table, size, wasPooled),
  };
}
