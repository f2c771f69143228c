import type * as z from "zod/mini";
import { canonicalJson } from "../../drill/canonicalJson";
import { sha256Hex } from "../../drill/sha256";
import { tryId } from "../../records/tryOfSitting";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { triesReceipt } from "../../school/wire/assignmentsWire";
import type { sentTries } from "../../school/wire/sentTriesWire";
import { addToChain, holdChain } from "../chain/schoolChain";
import type { AskingBench } from "../http/whoAsks";
import type { World } from "../world/world";

/** The sitting of a bench. @throws {SchoolError} "no-such-thing" where it was not begun there */
export async function sittingAtBench(
  sittingId: string,
  { schoolId, deviceId }: AskingBench,
  { database }: Pick<World, "database">,
) {
  const found = await database
    .selectFrom("begun_sittings")
    .selectAll()
    .where("school_id", "=", schoolId)
    .where("device_id", "=", deviceId)
    .where("id", "=", sittingId)
    .executeTakeFirst();
  if (found === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
  return found;
}

/** A try as it is kept. */
interface KeptTry {
  readonly body: string;
  readonly motion: string | null;
}

type Sent = z.infer<typeof sentTries>["tries"];

/** Tries that have come for the first time, by their places. @throws {SchoolError} "try-sent-otherwise" */
function freshOf(tries: Sent, there: ReadonlyMap<number, KeptTry>) {
  const fresh = new Map<number, KeptTry & { readonly waited_ms: number }>();
  for (const { index, result, motion, waited_ms } of tries) {
    const body = canonicalJson(result);
    const known = there.get(index) ?? fresh.get(index);
    if (known === undefined) fresh.set(index, { body, motion, waited_ms: Math.round(waited_ms) });
    else if (known.body !== body || known.motion !== motion) {
      throw new SchoolError(schoolProblem("try-sent-otherwise", ["tries", index]));
    }
  }
  return fresh;
}

/** What the chain holds of a try. */
const chainEntry = (sittingId: string, place: number, { body, motion }: KeptTry, at: number) => ({
  at,
  what: "sitting-try",
  ofId: tryId(sittingId, place),
  sha256: sha256Hex(canonicalJson([body, motion])),
});

/**
 * Keeps tries of a sitting that have ended: each once, and chained.
 *
 * @throws {SchoolError} "no-such-thing", and "try-sent-otherwise" where another one has a place: the first one stays
 */
export async function keepTries(
  sittingId: string,
  { tries }: z.infer<typeof sentTries>,
  bench: AskingBench,
  world: World,
): Promise<z.infer<typeof triesReceipt>> {
  const { schoolId } = bench;
  return world.database.transaction().execute(async (database) => {
    const chain = await holdChain(database, schoolId);
    // Looked for once nobody can be erased any more.
    await sittingAtBench(sittingId, bench, { database });
    const before = await database
      .selectFrom("sitting_tries")
      .select(["place", "body", "motion"])
      .where("school_id", "=", schoolId)
      .where("sitting_id", "=", sittingId)
      .execute();
    const there = new Map(before.map((row) => [row.place, row]));
    const fresh = freshOf(tries, there);
    const now = world.now();
    const of = { school_id: schoolId, sitting_id: sittingId, received_at: now };
    const rows = [...fresh].map(([place, one]) => ({ ...of, place, ...one }));
    if (rows.length > 0) await database.insertInto("sitting_tries").values(rows).execute();
    await addToChain(
      database,
      chain,
      rows.map((row) => chainEntry(sittingId, row.place, row, now)),
    );
    return { has: [...there.keys(), ...fresh.keys()].sort((one, other) => one - other) };
  });
}
