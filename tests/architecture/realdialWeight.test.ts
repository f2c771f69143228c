import { readdirSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { describe, expect, test } from "vitest";

const ROOT = join(import.meta.dirname, "../../src/realdial");

/** Bytes, gzipped, of all modules of some folders and what they use of others, minified. */
async function weightOf(folders: readonly string[]): Promise<number> {
  const files = folders.flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
      .filter((file) => file.endsWith(".ts"))
      .map((file) => `./${folder}/${file}`),
  );
  const { outputFiles } = await build({
    stdin: { contents: files.map((file, k) => `export * as m${k} from "${file}";`).join("\n"), resolveDir: ROOT },
    bundle: true,
    minify: true,
    format: "esm",
    write: false,
  });
  const [bundle] = outputFiles;
  return gzipSync(bundle?.contents ?? "", { level: 9 }).length;
}

describe("what a way to see a real dial weighs, gzipped: each is loaded by itself, and only when it is wanted", () => {
  test.each([
    { way: "a printed dial under a camera", folders: ["printed", "motion"], most: 11_500 },
    { way: "an ordinary dial under a camera", folders: ["ordinary", "motion"], most: 15_000 },
    { way: "an encoder's lines", folders: ["wire"], most: 2_500 },
  ])("$way: at most $most bytes", async ({ folders, most }) => {
    const weight = await weightOf(folders);
    expect(weight).toBeLessThanOrEqual(most);
    // A bundle that is nearly empty weighs nothing and proves nothing.
    expect(weight).toBeGreaterThan(most / 3);
  });
});
