import { faultTitle } from "../../dialing/faultName";
import type { WordedFault } from "../../dialing/faultWords";
import { capital } from "../../dialing/words";

/** Faults told by their names alone: with the help Counts nothing tells how far while one dials. */
export function faultsWithoutFigures(faults: readonly WordedFault[]): readonly WordedFault[] {
  return faults.map((fault) => {
    const happened = capital(faultTitle(fault.code, fault.number));
    return { ...fault, happened, message: `${happened}.` };
  });
}
