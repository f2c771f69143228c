import type { Plugin } from "vite";

const GENERATOR = /pure-rand\/lib\/esm\/generator\/mersenne\.js$/;
const LEAP = /\tjump\(\) \{\n[\s\S]*?\n\t\}/;

/** The generator of chance can leap ahead, by a table of 3 kB that does not compress. Nobody here leaps. */
export const chanceWithoutLeaps: Plugin = {
  name: "chance-without-leaps",
  apply: "build",
  transform(code, id) {
    if (!GENERATOR.test(id)) return null;
    const kept = code.replace(LEAP, '\tjump() {\n\t\tthrow new Error("the build leaves leaps out");\n\t}');
    if (kept === code) this.error("The generator does not leap any more as it did: see what it does now.");
    return { code: kept, map: null };
  },
};
