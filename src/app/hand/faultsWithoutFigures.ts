import { faultTitle } from "../../dialing/faultName";
import type { WordedFault } from "../../dialing/faultWords";

/** "Ran past at number 2" */
const titleOf = ({ code, number }: WordedFault): string => {
  const title = faultTitle(code, number);
  return `${title.charAt(0).toUpperCase()}${title.slice(1)}`;
};

/** Faults told by their names alone: with the help Counts nothing tells how far while one dials. */
export function faultsWithoutFigures(faults: readonly WordedFault[]): readonly WordedFault[] {
  return faults.map((fault) => ({ ...fault, happened: titleOf(fault), message: `${titleOf(fault)}.` }));
}
