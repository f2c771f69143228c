import { link, mkdir, open, readdir, readFile, unlink } from "node:fs/promises";
import { dirname, join } from "node:path";
import { errorText } from "../../wording/problem";
import { ServerError } from "../words/serverError";
import { serverProblem } from "../words/serverWords";

const FOLDER = "in-use";
/** Locks that were given back or whose process died: so many are left, that a slow starter finds its place taken. */
const LEFT = 20;
const GIVEN_BACK = "free\n";

/** The right to use a data folder, until it is given back. */
export interface FolderLock {
  /** Whether the process that had it before died with it: what it wrote last is still to be put right. */
  readonly wasLeft: boolean;
  readonly release: () => Promise<void>;
}

const hasCode = (error: unknown, code: string): boolean =>
  error instanceof Error && "code" in error && error.code === code;

/** Whether a process lives. One that we may not signal lives too. */
function isAlive(process_id: number): boolean {
  try {
    process.kill(process_id, 0);
    return true;
  } catch (error) {
    return hasCode(error, "EPERM");
  }
}

/** When a process began, as the system counts it: a number may be given again to another. Empty where no system tells. */
async function beganAt(process_id: number): Promise<string> {
  const stat = await readFile(`/proc/${process_id}/stat`, "utf8").catch(() => "");
  return stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19] ?? "";
}

/** The process that holds a lock file; null where it is gone, has given it back, or the file is none of ours. */
async function holder(file: string): Promise<number | null> {
  const [written = "", began = ""] = (await readFile(file, "utf8").catch(() => "")).trim().split(" ");
  const id = Number(written);
  if (!Number.isInteger(id) || id <= 0 || !isAlive(id)) return null;
  return began === "" || (await beganAt(id)) === began ? id : null;
}

/** Numbers of the locks in a folder, the latest first. */
async function locksIn(folder: string): Promise<number[]> {
  const numbers = (await readdir(folder)).map(Number).filter((number) => Number.isInteger(number) && number > 0);
  return numbers.sort((a, b) => b - a);
}

/** Writes a text to the disk under a name that nobody else has. */
async function written(file: string, text: string): Promise<void> {
  const made = await open(file, "w", 0o600);
  await made.write(text);
  await made.sync();
  await made.close();
}

/** A lock that was taken. */
interface Taken {
  readonly file: string;
  readonly wasLeft: boolean;
}

/** Tries to be the next in the row. @returns null where another was quicker */
async function takeNext(folder: string, own: string): Promise<Taken | null> {
  const [latest = 0] = await locksIn(folder);
  const before = join(folder, String(latest));
  const process_id = latest === 0 ? null : await holder(before);
  if (process_id !== null)
    throw new ServerError(serverProblem("folder-in-use", [], { folder: dirname(folder), process: process_id }));
  const wasLeft = latest > 0 && (await readFile(before, "utf8").catch(() => GIVEN_BACK)) !== GIVEN_BACK;
  const file = join(folder, String(latest + 1));
  try {
    // It comes whole or not at all, and only where there is none of its number.
    await link(own, file);
  } catch (error) {
    if (hasCode(error, "EEXIST")) return null;
    throw error;
  }
  const all = await locksIn(folder);
  for (const number of all.filter((one) => one < latest + 1 - LEFT)) {
    await unlink(join(folder, String(number))).catch(() => undefined);
  }
  if (all[0] === latest + 1) return { file, wasLeft };
  // Whoever came back after a very long time, to a place that has been passed.
  await unlink(file);
  return null;
}

async function take(folder: string): Promise<Taken> {
  const own = join(folder, `${process.pid}-${performance.now()}.own`);
  await written(own, `${process.pid} ${await beganAt(process.pid)}\n`);
  try {
    for (;;) {
      const taken = await takeNext(folder, own);
      if (taken !== null) return taken;
    }
  } finally {
    await unlink(own);
  }
}

/**
 * Takes a data folder for this process alone. The embedded database has no lock of its own, and a second process on one
 * folder destroys rows.
 *
 * Locks are numbered, and the latest holds. Whoever finds it dead or given back makes the next, which only one can do; no
 * lock is ever taken away from under another, so two starters at once cannot both have it.
 *
 * @throws {ServerError} "folder-in-use" with the process that has it, "folder-not-made"
 */
export async function lockFolder(folder: string): Promise<FolderLock> {
  try {
    const locks = join(folder, FOLDER);
    await mkdir(locks, { recursive: true, mode: 0o700 });
    const { file, wasLeft } = await take(locks);
    return { wasLeft, release: () => written(file, GIVEN_BACK).catch(() => undefined) };
  } catch (error) {
    if (error instanceof ServerError) throw error;
    throw new ServerError(serverProblem("folder-not-made", [], { folder, why: errorText(error) }));
  }
}
