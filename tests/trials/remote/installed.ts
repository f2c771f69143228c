import { existsSync } from "node:fs";

const placeOf = (program: string) =>
  ["/usr/bin", "/usr/local/bin"].map((folder) => `${folder}/${program}`).find(existsSync);

/** Where the programs of a browser are; null where one is missing. */
export function installed(programs: readonly string[]): readonly string[] | null {
  const places = programs.flatMap((program) => placeOf(program) ?? []);
  return places.length === programs.length ? places : null;
}
