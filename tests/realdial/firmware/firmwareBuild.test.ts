import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { FIRMWARE, imageOf } from "../../support/board/simulatedBoard";

const makefile = readFileSync(join(FIRMWARE, "Makefile"), "utf8");
/** Another compiler makes another image of the same program. */
const BUILT_BY = /avr-gcc (\d+\.\d+\.\d+)/.exec(makefile)?.[1];

const compiler = spawnSync("avr-gcc", ["-dumpversion"], { encoding: "utf8" });
const version = compiler.status === 0 ? compiler.stdout.trim() : null;

/** A skipped test shows no reason by itself. */
function saidWhere(isSo: boolean, why: string): boolean {
  if (isSo) process.stdout.write(`firmware ${why}\n`);
  return isSo;
}

test("the image that lies in the repository is what its program comes to", ({ skip }) => {
  skip(saidWhere(version === null, "not built: avr-gcc is not installed here (Debian: gcc-avr and avr-libc)"));
  const folder = mkdtempSync(join(tmpdir(), "firmware-"));
  try {
    const made = spawnSync("make", ["-B", `OUT=${folder}`], { cwd: FIRMWARE, encoding: "utf8" });
    expect(made.status, made.stderr).toBe(0);
    skip(
      saidWhere(
        version !== BUILT_BY,
        `built, but not compared: the image was built by avr-gcc ${BUILT_BY}, here is ${version}`,
      ),
    );
    const built = imageOf(readFileSync(join(folder, "encoder.hex"), "utf8"));
    expect(Buffer.from(built).equals(imageOf(readFileSync(join(FIRMWARE, "encoder.hex"), "utf8")))).toBe(true);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
