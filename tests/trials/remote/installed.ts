import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** A browser that a trial needs, and where Debian has it. */
interface Wanted {
  readonly programs: readonly string[];
  readonly packages: readonly string[];
}

/** Debian's installer. */
const APT = "apt-get";

const isRoot = () => process.getuid?.() === 0;
const placeOf = (program: string) =>
  ["/usr/bin", "/usr/local/bin"].map((folder) => `${folder}/${program}`).find(existsSync);

/** Where the programs are, installed first where we may; null where one is missing. The packages are Debian's own. */
export function installed({ programs, packages }: Wanted): readonly string[] | null {
  const isThere = () => programs.every((program) => placeOf(program) !== undefined);
  if (!isThere() && isRoot() && placeOf(APT) !== undefined) {
    spawnSync(APT, ["update"], { stdio: "ignore" });
    spawnSync(APT, ["install", "-y", "--no-install-recommends", ...packages], { stdio: "ignore" });
  }
  return isThere() ? programs.map((program) => placeOf(program) ?? program) : null;
}
