import type { Interval } from "../../../statistics/interval";

/** A value with what is left open about it, on a line of its own. */
export interface IntervalRow {
  readonly label: string;
  readonly value: number;
  /** Null where one value tells nothing of it. */
  readonly interval: Interval | null;
  /** A wider band behind it, such as where single stops fall. */
  readonly band?: Interval | undefined;
}

/** Values with their intervals, one below the other on one axis. */
export interface IntervalChartModel {
  readonly kind: "intervals";
  readonly rows: readonly IntervalRow[];
  readonly domain: Interval;
  /** What the axis shows, with its unit. */
  readonly axis: string;
  /** A stretch that is good, such as a tolerance. */
  readonly good?: Interval | undefined;
  readonly tickText?: ((value: number) => string) | undefined;
}

/** A point of a run chart. */
export interface RunPoint {
  readonly x: number;
  readonly y: number;
}

/** A line of a run chart; the names are those of the style sheet. */
export interface RunLine {
  readonly look: "thin" | "heavy" | "limit" | "center";
  readonly points: readonly RunPoint[];
  /** Written at its end, or beside it. */
  readonly label?: string | undefined;
}

/** Something measured over something else. */
export interface RunChartModel {
  readonly kind: "run";
  /** `isCount` where only whole numbers mean anything, such as attempts. */
  readonly x: { readonly label: string; readonly domain: Interval; readonly isCount: boolean };
  readonly y: { readonly label: string; readonly domain: Interval; readonly tickText?: (value: number) => string };
  readonly dots: readonly (RunPoint & { readonly isMarked: boolean })[];
  readonly lines: readonly RunLine[];
  readonly band: readonly (Interval & { readonly x: number })[];
}

/** One stretch of the heat strip. */
export interface HeatCell {
  readonly from: number;
  readonly to: number;
  /** Null where there was no stop. */
  readonly badness: number | null;
  /** Mean stop error, for its sign. */
  readonly bias: number | null;
}

/** The dial laid out straight. */
export interface HeatChartModel {
  readonly kind: "heat";
  readonly cells: readonly HeatCell[];
  readonly axis: string;
  /** Badness of the darkest cell, graduations. */
  readonly worst: number;
}

/** A table of words and figures, ready to show; its first column heads the rows. */
export interface TableModel {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A view of progress: a sentence first, a picture second, a table third, the method last. */
export interface FigureModel {
  readonly title: string;
  readonly sentence: string;
  readonly chart: IntervalChartModel | RunChartModel | HeatChartModel | null;
  readonly table: TableModel | null;
  /** How it is worked out, by the name of the method, for those who want it. */
  readonly note?: string | undefined;
}

/** A view that cannot be told yet. @param needs - what it needs, in a sentence */
export const untoldFigure = (title: string, needs: string): FigureModel => ({
  title,
  sentence: needs,
  chart: null,
  table: null,
});

/** Whether a view has anything to show. */
export const isTold = ({ chart, table }: FigureModel): boolean => chart !== null || table !== null;
