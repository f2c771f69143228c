import type { SourceDescription } from "../../realdial/sources/sourceDescription";
import type { SourceKind } from "../../realdial/sources/sourceKinds";
import type { Admission } from "../sheet/admission";
import type { Station } from "../sheet/sheet";

/** Dials and knobs that a hand turns like the dial of a lock; the other sources move it by steps or by a stick. */
const REAL_DIALS: readonly SourceKind[] = ["printed-dial", "ordinary-dial", "encoder", "phone"];

type Source = Pick<SourceDescription, "kind" | "isCoarse">;

const ADMITS: Readonly<Record<Admission, (source: Source) => boolean>> = {
  any: () => true,
  screen: ({ kind }) => kind === "screen",
  "real-dial": ({ kind }) => REAL_DIALS.includes(kind),
  "not-coarse": ({ isCoarse }) => !isCoarse,
};

/** Whether stops are marked to a fraction of a graduation, and not by count and order alone. */
export function marksFractions(station: Station): boolean {
  if (station.kind === "zeroing") return true;
  if (station.kind !== "dialing") return false;
  const { stopErrorBias, stopErrorSpread } = station.passMarks;
  return stopErrorBias !== undefined || stopErrorSpread !== undefined;
}

/** Whether a station admits a source: by what its sheet says, and no coarse one where stops are marked to a fraction. */
export function admitsSource(source: Source, station: Station): boolean {
  const admission = "turnedBy" in station ? (station.turnedBy ?? "any") : "any";
  return ADMITS[admission](source) && !(source.isCoarse && marksFractions(station));
}

/** The hands on the screen, as far as the rule asks. */
const SCREEN: Source = { kind: "screen", isCoarse: false };

/**
 * Whether all that turned the dial of a try is admitted at its station. A try that says nothing of it was turned by the hands
 * on the screen; one in which nothing was turned is judged the same.
 */
export const isAdmitted = (
  { sources = [SCREEN] }: { readonly sources?: readonly Source[] | undefined },
  station: Station,
) => sources.every((source) => admitsSource(source, station));
