import { readFileSync } from "node:fs";
import * as z from "zod/mini";

const manifest = z.object({ version: z.string() });

/** The version of this program, as records name the one that made them. */
export const programVersion = (): string =>
  manifest.parse(JSON.parse(readFileSync(new URL("../../../package.json", import.meta.url), "utf8"))).version;
