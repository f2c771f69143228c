import { readFileSync } from "node:fs";
import { join } from "node:path";
import * as z from "zod/mini";

const manifest = z.object({ version: z.string() });

/** The version of this program, as it stands on what it signs. */
export const programVersion = (): string =>
  manifest.parse(JSON.parse(readFileSync(join(import.meta.dirname, "../../../package.json"), "utf8"))).version;
