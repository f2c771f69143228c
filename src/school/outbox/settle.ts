import type * as z from "zod/mini";
import type { Problem } from "../../wording/problem";
import type { recordsReceipt } from "../wire/recordsWire";

/** What becomes of a record that was sent: it waits no more, or is refused and why. */
export interface Settled {
  readonly id: string;
  readonly state: "sent" | "refused";
  readonly problem?: Problem;
}

type Receipt = z.infer<typeof recordsReceipt>["receipts"][number];

function settledBy(id: string, { outcome, problem }: Receipt): Settled {
  if (outcome !== "refused") return { id, state: "sent" };
  return { id, state: "refused", ...(problem !== undefined && { problem }) };
}

/**
 * What a receipt says of the records that were sent. A record that was erased at the school waits no more either. What the
 * receipt does not name, or names in another place, waits on.
 *
 * @param sent - ids, in the order they were sent
 */
export const settle = (sent: readonly string[], receipts: readonly Receipt[]): readonly Settled[] =>
  sent.flatMap((id, k) => {
    const receipt = receipts[k];
    return receipt === undefined || (receipt.id ?? id) !== id ? [] : [settledBy(id, receipt)];
  });
