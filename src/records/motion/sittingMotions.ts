import * as z from "zod/mini";
import { shortText } from "../../lock/fieldSchemas";
import { tryId } from "../tryOfSitting";
import { fromBase64 } from "./base64";
import { recordings } from "./recordings";

/** As much of a sitting's record as its recordings take; what else is in it does not matter here. */
const recorded = z.object({ sha256: shortText(64), record: z.object({ motions: recordings }) });

function unpacked(packed: string | null): Uint8Array | null {
  if (packed === null) return null;
  try {
    return fromBase64(packed);
  } catch {
    // What cannot be read is no copy of anything; the check of the record says that it cannot.
    return null;
  }
}

/** The recordings that a sitting's record brings along, as the logbook packs them, in the order of its tries. */
export interface SittingMotions {
  /** Of the record. */
  readonly sha256: string;
  readonly motions: readonly (Uint8Array | null)[];
}

/** Recordings of a record and its hash as they come from a file; null where there are none. Never throws. */
export function sittingMotions(body: unknown): SittingMotions | null {
  const read = recorded.safeParse(body);
  return read.success ? { sha256: read.data.sha256, motions: read.data.record.motions.map(unpacked) } : null;
}

/** Recordings of a sitting in the logbook, by the id that the attempt of each try has. */
export function motionsByTry({ id, body }: { readonly id: string; readonly body: unknown }): Map<string, Uint8Array> {
  const motions = sittingMotions(body)?.motions ?? [];
  return new Map(motions.flatMap((bytes, index) => (bytes === null ? [] : [[tryId(id, index), bytes] as const])));
}
