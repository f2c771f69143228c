import { mkdir, open, readFile, unlink } from "node:fs/promises";
import { join } from "node:path";
import { errorText } from "../../wording/problem";
import { ServerError } from "../words/serverError";
import { serverProblem } from "../words/serverWords";

const FILE = "in-use-by";

/** The right to use a data folder, until it is given back. */
export interface FolderLock {
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

/** The process that holds a lock file; null where it is gone or the file is none of ours. */
async function holder(file: string): Promise<number | null> {
  const [written = "", began = ""] = (await readFile(file, "utf8").catch(() => "")).trim().split(" ");
  const id = Number(written);
  if (!Number.isInteger(id) || id <= 0 || !isAlive(id)) return null;
  return began === "" || (await beganAt(id)) === began ? id : null;
}

async function take(file: string): Promise<void> {
  const made = await open(file, "wx");
  await made.write(`${process.pid} ${await beganAt(process.pid)}\n`);
  await made.sync();
  await made.close();
}

/**
 * Takes a data folder for this process alone. The embedded database has no lock of its own, and a second process on one
 * folder destroys rows. A lock left by a killed process is taken over.
 *
 * @throws {ServerError} "folder-in-use" with the process that has it, "folder-not-made"
 */
export async function lockFolder(folder: string): Promise<FolderLock> {
  const file = join(folder, FILE);
  try {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    await take(file).catch(async (error: unknown) => {
      if (!hasCode(error, "EEXIST")) throw error;
      const other = await holder(file);
      if (other !== null) throw new ServerError(serverProblem("folder-in-use", [], { folder, process: other }));
      await unlink(file);
      await take(file);
    });
  } catch (error) {
    if (error instanceof ServerError) throw error;
    throw new ServerError(serverProblem("folder-not-made", [], { folder, why: errorText(error) }));
  }
  return { release: () => unlink(file).catch(() => undefined) };
}
