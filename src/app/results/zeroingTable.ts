import { isDoubted } from "../../realdial/sources/dialDoubt";
import type { ZeroingRecord } from "../../records/records";
import { clockText, dayText } from "../parts/moments";
import type { TableModel } from "../pictures/charts/figureModel";
import { TURNS_IN_DOUBT } from "./doubtWords";
import { turnedWithText } from "./sourceWords";

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

function resultText(zeroing: ZeroingRecord): string {
  const { outcome, isLate, isNotAdmitted } = zeroing;
  const late = isLate === true ? ", too late" : "";
  const doubt = isDoubted(zeroing) ? `, ${TURNS_IN_DOUBT}` : "";
  return `${OUTCOMES[outcome]}${late}${isNotAdmitted === true ? ", source not admitted" : ""}${doubt}`;
}

/** The latest zeroings as a table. It says what turned the dial where that was not always the screen. */
export function zeroingTable(zeroings: readonly ZeroingRecord[]): TableModel {
  const latest = latestZeroings(zeroings);
  const isNamed = latest.some(({ sources }) => sources !== undefined);
  return {
    caption: "Zeroings, latest first",
    head: ["when", "result", "stops accepted", "refused", ...(isNamed ? ["turned by"] : [])],
    rows: latest.map((zeroing) => {
      const { startedAt, readings } = zeroing;
      const refused = readings.filter(({ refusal }) => refusal !== undefined).length;
      return [
        `${dayText(startedAt)} ${clockText(startedAt)}`,
        resultText(zeroing),
        `${readings.length - refused}`,
        `${refused}`,
        ...(isNamed ? [turnedWithText(zeroing)] : []),
      ];
    }),
  };
}
