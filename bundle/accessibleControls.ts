import { readFile } from "node:fs/promises";
import type { Plugin } from "vite";

/** Where the library of controls writes a style element into the page. `controls.css` says what these elements would. */
const STYLED_BY_SCRIPT = /react-aria\/dist\/private\/(?:interactions\/usePress|overlays\/usePreventScroll)\.mjs$/;
const INTO_THE_PAGE = /\b(?:ownerDocument|document)\.head\.prepend\(style\)/;

/** Keeps the library of controls from writing style elements into the page, which the policy refuses. */
export const noStyleElements: Plugin = {
  name: "no-style-elements",
  apply: "build",
  transform(code, id) {
    if (!STYLED_BY_SCRIPT.test(id)) return null;
    if (!INTO_THE_PAGE.test(code))
      this.error("This writes no style element any more: see how the library styles the page.");
    return { code: code.replace(INTO_THE_PAGE, "void style"), map: null };
  },
};

const EVERY_LANGUAGE = /react-aria\/dist\/private\/\w+\/intlStrings\.mjs$/;
const ENGLISH = /import (\S+) from "([^"]+\/en-US\.mjs)";/;

/** The library speaks 34 languages, the app one; how numbers are written is up to the browser all the same. */
export const englishOnly: Plugin = {
  name: "english-only",
  apply: "build",
  async load(id) {
    if (!EVERY_LANGUAGE.test(id)) return null;
    const [line, name] = ENGLISH.exec(await readFile(id, "utf8")) ?? this.error("Found no English words here.");
    return `${line}\nexport default { "en-US": ${name} };`;
  },
};
