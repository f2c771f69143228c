import { compile } from "tailwindcss";

/** A file by its path, and what is in it. */
export interface Written {
  readonly file: string;
  readonly text: string;
}

/** A sheet without its comments, and without the sheets that it takes in: those are looked at themselves. */
const withoutComments = (css: string) => css.replaceAll(/\/\*[\s\S]*?\*\/|@import [^;]*;/g, "");

/** The class names that style sheets have rules for, each once. */
export const styledClasses = (css: string): string[] => [
  ...new Set(
    [...withoutComments(css).matchAll(/([^{}]+)\{/g)]
      .map(([, selector = ""]) => selector.trim())
      .filter((selector) => !selector.startsWith("@"))
      .flatMap((selector) => [...selector.matchAll(/\.([a-z][\w-]*)/g)].map(([, name = ""]) => name)),
  ),
];

/** The parts of a name that is put together while the page runs: `pip-${kind}` gives `pip-`. */
const beginnings = (text: string): string[] =>
  [...text.matchAll(/[`\s]([a-z][a-z-]*-)\$\{/g)].map(([, name = ""]) => name);

/** Classes with a rule of their own that no screen names. */
export function unusedClasses(css: string, screens: readonly Written[]): string[] {
  const text = screens.map((screen) => screen.text).join("\n");
  const words = new Set(text.match(/[\w-]+/g));
  const begun = beginnings(text);
  return styledClasses(css).filter((name) => !words.has(name) && !begun.some((begin) => name.startsWith(begin)));
}

/** What stands in a `className`, as far as it is written out. */
const written = (value: string): string[] =>
  value.startsWith('"')
    ? [value.slice(1, -1)]
    : [...value.matchAll(/"([^"]*)"|[`}]([^`$"{}]*)(?=[`$])/g)].map(([, a, b]) => a ?? b ?? "");

/** The class names of a screen, those that begin only and are put together later left out. */
export const namedClasses = ({ text }: Written): string[] =>
  [...text.matchAll(/className=("[^"]*"|\{(?:[^{}]|\{[^{}]*\})*\})/g)]
    .flatMap(([, value = ""]) => written(value.replaceAll(/=== "[^"]*"/g, "")))
    .flatMap((names) => names.split(/\s+/))
    .filter((name) => name !== "" && !name.endsWith("-"));

/** Says of a class name whether the vocabulary makes a rule of it. */
export async function vocabulary(looks: string): Promise<(name: string) => boolean> {
  const { build } = await compile(looks, {
    loadStylesheet: (id) => Promise.resolve({ path: id, base: "", content: "@tailwind utilities;" }),
  });
  let before = build([]);
  return (name) => {
    const after = build([name]);
    const isMade = after !== before;
    before = after;
    return isMade;
  };
}
