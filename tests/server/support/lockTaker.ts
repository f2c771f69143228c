import { createInterface } from "node:readline";
import { lockFolder } from "../../../src/server/database/folderLock";
import { ServerError } from "../../../src/server/words/serverError";

/* A process that takes a data folder when it is told to by a line, and says what came of it; it holds it until it dies or is told "release". */

const [folder = ""] = process.argv.slice(2);
let lock: Awaited<ReturnType<typeof lockFolder>> | null = null;

for await (const line of createInterface({ input: process.stdin })) {
  if (line === "release") {
    await lock?.release();
    process.stdout.write("released\n");
    continue;
  }
  try {
    lock = await lockFolder(folder);
    process.stdout.write("held\n");
  } catch (error) {
    process.stdout.write(`${error instanceof ServerError ? error.code : String(error)}\n`);
  }
}
