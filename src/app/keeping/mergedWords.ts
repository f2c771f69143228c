import type { Merged } from "../../store/wholeLogbook";
import { countText } from "../../wording/amountWords";

/** What an import did, in a sentence. */
export function mergedWords({ added, updated, kept }: Merged): string {
  if (added + updated + kept === 0) return "The file is a logbook with nothing in it.";
  if (added + updated === 0) return `Nothing new: ${countText(kept, "record was", "records were")} here already.`;
  const parts = [
    `${countText(added, "record")} added`,
    ...(updated > 0 ? [`${updated} updated`] : []),
    ...(kept > 0 ? [`${kept} already here`] : []),
  ];
  return `${parts.join(", ")}.`;
}
