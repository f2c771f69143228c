import { dirname, join, normalize } from "node:path/posix";

const BOTTOM = ["wording", "lock", "statistics"];
const LOGIC = [...BOTTOM, "fitting", "service", "dialing", "zeroing", "realdial", "trace", "drill", "handover"];
const RECORDS = [...LOGIC, "records", "progress"];
const SCHOOL = [...RECORDS, "school"];

/** Each layer, and the layers it may import. DEVELOPERS.md shows the same table to people. */
export const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  wording: [],
  lock: ["wording"],
  statistics: ["wording"],
  fitting: BOTTOM,
  service: ["lock", "statistics", "fitting"],
  dialing: ["wording", "lock"],
  zeroing: BOTTOM,
  realdial: BOTTOM,
  trace: ["wording", "lock", "dialing", "realdial"],
  drill: [...BOTTOM, "fitting", "service", "dialing", "zeroing", "realdial", "trace"],
  handover: [...BOTTOM, "fitting", "dialing", "zeroing", "realdial", "trace", "drill"],
  records: LOGIC,
  progress: [...LOGIC, "records"],
  school: RECORDS,
  store: [...LOGIC, "records", "school"],
  app: [...SCHOOL, "store"],
  cli: SCHOOL,
  server: [...SCHOOL, "bundle"],
  bundle: [],
};

/** Layers that know no screen, no clock and no chance of their own. */
export const PURE: readonly string[] = SCHOOL;

/** What the build is made with: no layer but `bundle`, which no page and no command imports, sees the tool. */
const BUILD_TOOLS = ["vite"];

/** Packages that a pure layer may build on; each is as pure as the layer. */
const PURE_PACKAGES = [
  "xstate",
  "zod",
  "pure-rand",
  "@stdlib",
  "ml-levenberg-marquardt",
  "ml-matrix",
  "fflate",
  "@noble/hashes",
  "@noble/curves",
  "d3-dsv",
  "ts-fsrs",
];

/** A source file: its path inside src, with forward slashes, and its text. */
export interface SourceFile {
  readonly file: string;
  readonly text: string;
}

/** The layer a path inside src belongs to; "" for a file that lies in none. */
export function layerOf(file: string): string {
  const [folder = "", ...rest] = file.split("/");
  return rest.length === 0 ? "" : folder;
}

const withoutComments = (text: string) => text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/(^|\s)\/\/.*$/gm, "$1");

/** What a file imports, as written: static, for its effects, types only, and dynamic. */
export function importsOf(text: string): string[] {
  const patterns = [
    /\bfrom\s*["']([^"'\n]+)["']/g,
    /\bimport\s*["']([^"'\n]+)["']/g,
    /\bimport\(\s*["'`]([^"'`]+)["'`]/g,
  ];
  const bare = withoutComments(text);
  return patterns.flatMap((pattern) => [...bare.matchAll(pattern)].map(([, path = ""]) => path));
}

const isRelative = (path: string) => path.startsWith(".");
const packageOf = (path: string) =>
  path
    .split("/")
    .slice(0, path.startsWith("@") ? 2 : 1)
    .join("/");

/** Imports that leave a file's layer upward or sideways, or leave src for anything but the shared data. */
export function forbiddenImports({ file, text }: SourceFile): string[] {
  const layer = layerOf(file);
  return importsOf(text)
    .filter(isRelative)
    .filter((path) => {
      const target = normalize(join(dirname(file), path));
      if (target.startsWith("..")) return !target.startsWith("../shared/");
      const other = layerOf(target);
      return other !== layer && !MAY_IMPORT[layer]?.includes(other);
    });
}

/** Packages that a file imports and may not: tools of development, and whatever a pure layer does not build on. */
export function forbiddenPackages({ file, text }: SourceFile, dependencies: readonly string[]): string[] {
  const layer = layerOf(file);
  return importsOf(text)
    .filter((path) => !isRelative(path))
    .filter((path) => {
      const name = packageOf(path);
      if (path.startsWith("node:")) return !["cli", "bundle", "server"].includes(layer);
      if (BUILD_TOOLS.includes(name)) return layer !== "bundle";
      // A module that the build itself makes.
      if (path.startsWith("virtual:")) return layer !== "app";
      if (!dependencies.includes(name)) return true;
      return PURE.includes(layer) && !PURE_PACKAGES.some((pure) => name === pure || name.startsWith(`${pure}/`));
    });
}

const WORLD =
  /\b(Date\s*\(\s*\)|Date\.now|new Date\b(?!\s*\()|performance\.|Math\.random|crypto\.|document\.|window\.|globalThis\b|localStorage|sessionStorage|indexedDB|navigator\.|setTimeout|setInterval|requestAnimationFrame|fetch\s*\(|process\.|console\.)/;

/** The first piece of the outer world in a file of a pure layer: a clock, chance, a screen, storage; or none. */
export function worldIn({ file, text }: SourceFile): string | undefined {
  return PURE.includes(layerOf(file)) ? WORLD.exec(withoutComments(text))?.[0] : undefined;
}

/** Where a browser words its own errors, its words are all there is to know them by. */
const READS_BROWSER_WORDS = ["app/parts/page/filesGone.ts"];

const TAKEN_APART =
  /\b(message|says?|sentence|why)(\)|\]|\?)*\.(split|match|matchAll|replace|replaceAll|startsWith|endsWith|includes|indexOf|search)\(/;

/** Where a sentence is taken apart to get back what it was made of; or undefined. Problems are data: `wording/problem.ts`. */
export function sentenceTakenApart({ file, text }: SourceFile): string | undefined {
  return READS_BROWSER_WORDS.includes(file) ? undefined : TAKEN_APART.exec(withoutComments(text))?.[0];
}

/** The one class of errors that may be an `Error` itself: all others are made of a problem. */
const BASE_OF_ERRORS = "wording/problem.ts";

const MADE_OF_TEXT = /\b(?:new (?!(?:Type|Range|Syntax)?Error\b)\w*Error|super)\(\s*["'`]/;
const ERROR_CLASS = /\bclass \w+ extends (?:Type|Range|Syntax)?Error\b/;

/**
 * Where an error's words are written before anyone asks for them: a class of errors with no problem below it, or one made
 * of a text; or undefined. A plain `Error` says that the program itself is wrong, to whoever mends it.
 */
export function errorInWords({ file, text }: SourceFile): string | undefined {
  const bare = withoutComments(text);
  return file === BASE_OF_ERRORS ? undefined : (ERROR_CLASS.exec(bare) ?? MADE_OF_TEXT.exec(bare))?.[0];
}

const UNDOCUMENTED =
  /(?<!\*\/\n)^export (?:declare )?(?:abstract )?(?:async )?(?:function\*?|const|let|class|interface|type|enum) (\w+)/gm;

/** What a file of a pure layer exports without saying what it is. */
export function undocumented({ file, text }: SourceFile): string[] {
  return PURE.includes(layerOf(file)) ? [...text.matchAll(UNDOCUMENTED)].map(([, name = ""]) => name) : [];
}
