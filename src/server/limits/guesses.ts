import type { Transaction, UpdateObject } from "kysely";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { Tables } from "../database/tables/tables";
import { secretHash } from "../security/secrets";
import type { World } from "../world/world";

const SECOND_MS = 1000;
const MINUTE_MS = 60 * SECOND_MS;
/** After so long without a try all is forgotten, ms. */
const FORGOTTEN_AFTER_MS = 60 * MINUTE_MS;
/** One try in so many sweeps out what is forgotten. */
const SWEEP_ONE_IN = 256;

/** Tries before the first wait, and the longest wait. The wait begins with a second and doubles. */
interface Patience {
  readonly free: number;
  readonly longest_ms: number;
}

/**
 * What can be guessed, each by itself. An address may be a whole school's, so it has many tries; a password or a PIN few.
 * Whoever wants to shut somebody out of their own name keeps them waiting a minute, or for a PIN a quarter of an hour.
 */
const PATIENCE = {
  "code-from": { free: 60, longest_ms: MINUTE_MS },
  "card-from": { free: 60, longest_ms: MINUTE_MS },
  "link-from": { free: 30, longest_ms: MINUTE_MS },
  "password-from": { free: 60, longest_ms: MINUTE_MS },
  "password-of": { free: 5, longest_ms: MINUTE_MS },
  // Not a guess: new names are made by whoever has a code, and nobody makes them by the thousand.
  "newcomer-from": { free: 400, longest_ms: MINUTE_MS },
  "pin-of": { free: 5, longest_ms: 15 * MINUTE_MS },
} as const satisfies Readonly<Record<string, Patience>>;

/** One thing that is tried: what, and where from ("code-from", an address) or at what ("password-of", a sign-in name). */
export type Guess = readonly [what: keyof typeof PATIENCE, of: string];

const keyOf = ([what, of]: Guess): string => `${what}:${secretHash(of)}`;

/** How long the next try waits after so many, ms. */
function waitAfter(count: number, { free, longest_ms }: Patience): number {
  return count < free ? 0 : Math.min(longest_ms, SECOND_MS * 2 ** (count - free));
}

const setTry = (database: Transaction<Tables>, key: string, values: UpdateObject<Tables, "tries">) =>
  database.updateTable("tries").set(values).where("key", "=", key).execute();

/** Counts a try before it is made, so that of many at once each is counted. @returns 0, or how long to wait, ms */
async function count(guess: Guess, { database, now, chance }: World): Promise<number> {
  const at = now();
  const key = keyOf(guess);
  return database.transaction().execute(async (transaction) => {
    if (chance(1)[0] === SWEEP_ONE_IN - 1) {
      await transaction
        .deleteFrom("tries")
        .where("last_at", "<", at - FORGOTTEN_AFTER_MS)
        .execute();
    }
    await transaction
      .insertInto("tries")
      .values({ key, count: 0, last_at: at, until: 0 })
      .onConflict((conflict) => conflict.column("key").doNothing())
      .execute();
    const before = await transaction
      .selectFrom("tries")
      .selectAll()
      .where("key", "=", key)
      .forUpdate()
      .executeTakeFirstOrThrow();
    const { longest_ms } = PATIENCE[guess[0]];
    if (before.until > at + longest_ms) {
      // Set by a clock that was ahead. Nobody waits until then, and nobody is let in for it either: the wait begins now.
      await setTry(transaction, key, { until: at + longest_ms });
      return longest_ms;
    }
    if (before.until > at) return before.until - at;
    const tries = before.last_at < at - FORGOTTEN_AFTER_MS ? 1 : before.count + 1;
    const wait = waitAfter(tries, PATIENCE[guess[0]]);
    // Without a wait no moment is set: one that began a little earlier, or whose clock is behind, would be kept waiting by it.
    await setTry(transaction, key, { count: tries, last_at: at, ...(wait > 0 && { until: at + wait }) });
    return 0;
  });
}

/** Takes back a try that was right. What it was aimed at is forgotten; where it came from has one try less. */
async function forget(guess: Guess, { database }: World): Promise<void> {
  const key = keyOf(guess);
  if (guess[0].endsWith("-of")) {
    await database.deleteFrom("tries").where("key", "=", key).execute();
    return;
  }
  await database
    .updateTable("tries")
    .set(({ eb, fn, val }) => ({ count: fn<number>("greatest", [val(0), eb("count", "-", 1)]), until: 0 }))
    .where("key", "=", key)
    .execute();
}

/**
 * Counts a try, or refuses it because there were too many.
 *
 * @throws {SchoolError} "wait-first"
 */
export async function counted(guess: Guess, world: World): Promise<void> {
  const wait = await count(guess, world);
  if (wait > 0) throw new SchoolError(schoolProblem("wait-first", [], { seconds: Math.ceil(wait / SECOND_MS) }));
}

/**
 * Makes a try of something that can be guessed. Every wrong one makes the next wait longer, whichever server is asked;
 * a right one counts for nothing. Nobody learns by waiting whether there is what they guess at: what there is not is
 * counted alike.
 *
 * @param guesses - each that it counts for
 * @param attempt - throws where it was wrong
 * @throws {SchoolError} "wait-first"; whatever `attempt` throws
 */
export async function trying<Result>(
  guesses: readonly Guess[],
  world: World,
  attempt: () => Promise<Result>,
): Promise<Result> {
  for (const guess of guesses) await counted(guess, world);
  const result = await attempt();
  for (const guess of guesses) await forget(guess, world);
  return result;
}
