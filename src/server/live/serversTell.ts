import * as z from "zod/mini";
import { type LiveBench, liveBenches } from "../../school/wire/liveWire";
import { CHANNEL_BYTES } from "../database/channel";

const told = z.discriminatedUnion("kind", [
  z.object({ from: z.string(), kind: z.literal("here"), isNew: z.boolean() }),
  z.object({
    from: z.string(),
    kind: z.literal("benches"),
    schoolId: z.string(),
    classId: z.string(),
    benches: liveBenches,
  }),
  z.object({
    from: z.string(),
    kind: z.enum(["lowered", "wanted"]),
    schoolId: z.string(),
    classId: z.string(),
    deviceId: z.string(),
  }),
]);

/**
 * What servers of one database tell each other: that they are there (and have just come, so that they want to know all),
 * how their benches are, that an instructor lowered a hand, that the attempt of a bench is wanted as a row.
 */
export type ServersTell = z.infer<typeof told>;

/** Reads what another server told; null for what a server of another version may tell. */
export function readTold(text: string): ServersTell | null {
  try {
    const { success, data } = told.safeParse(JSON.parse(text));
    return success ? data : null;
  } catch {
    return null;
  }
}

/** Benches in as few messages as their bound allows. */
export function benchMessages(
  from: string,
  { schoolId, classId }: { readonly schoolId: string; readonly classId: string },
  benches: readonly LiveBench[],
): string[] {
  const frame = { from, kind: "benches", schoolId, classId };
  const room = CHANNEL_BYTES - Buffer.byteLength(JSON.stringify({ ...frame, benches: [] }));
  const parts: string[][] = [];
  let left = 0;
  for (const text of benches.map((bench) => JSON.stringify(bench))) {
    const bytes = Buffer.byteLength(text) + 1;
    if (bytes > left) {
      parts.push([]);
      left = room;
    }
    left -= bytes;
    parts.at(-1)?.push(text);
  }
  return parts.map((part) => JSON.stringify(frame).replace(/\}$/, `,"benches":[${part.join(",")}]}`));
}
