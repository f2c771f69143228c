import type { ZeroingRecord } from "../../records/records";
import { clockText, dayText } from "../parts/moments";
import type { TableModel } from "../pictures/charts/figureModel";

const OUTCOMES: Readonly<Record<ZeroingRecord["outcome"], string>> = {
  "zero-set": "Zero set",
  "not-set": "Not set",
  "broken-off": "Broken off",
};

const MOST = 10;

/** Those that are listed, latest first. */
export const latestZeroings = (zeroings: readonly ZeroingRecord[]): readonly ZeroingRecord[] =>
  zeroings.toSorted((a, b) => b.startedAt - a.startedAt).slice(0, MOST);

/** A zeroing in a few words: when, and its result. */
export const zeroingName = ({ startedAt, outcome }: ZeroingRecord): string =>
  `${dayText(startedAt)} ${clockText(startedAt)}, ${OUTCOMES[outcome].toLowerCase()}`;

/** The latest zeroings as a table. */
export function zeroingTable(zeroings: readonly ZeroingRecord[]): TableModel {
  return {
    caption: "Zeroings, latest first",
    head: ["when", "result", "stops accepted", "refused"],
    rows: latestZeroings(zeroings).map(({ startedAt, outcome, isLate, readings }) => {
      const refused = readings.filter(({ refusal }) => refusal !== undefined).length;
      return [
        `${dayText(startedAt)} ${clockText(startedAt)}`,
        isLate === true ? `${OUTCOMES[outcome]}, too late` : OUTCOMES[outcome],
        `${readings.length - refused}`,
        `${refused}`,
      ];
    }),
  };
}
