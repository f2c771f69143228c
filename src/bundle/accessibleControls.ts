import { readFile } from "node:fs/promises";
import type { Plugin } from "vite";

/** What the library of controls does that the policy refuses, file by file, and what is done instead. */
const REFUSED = [
  // Style elements written into the page: `controls.css` says what they would.
  { file: "interactions/usePress", does: /\bownerDocument\.head\.prepend\(style\)/g, instead: "void style" },
  { file: "overlays/usePreventScroll", does: /\bdocument\.head\.prepend\(style\)/g, instead: "void style" },
  { file: "live-announcer/LiveAnnouncer", does: /\.innerHTML = ''/g, instead: ".replaceChildren()" },
] as const;

/** Keeps the library of controls within the policy of the page. */
export const controlsUnderPolicy: Plugin = {
  name: "controls-under-policy",
  apply: "build",
  transform(code, id) {
    const refused = REFUSED.find(({ file }) => id.endsWith(`react-aria/dist/private/${file}.mjs`));
    if (refused === undefined) return null;
    const kept = code.replace(refused.does, refused.instead);
    if (kept === code) this.error("This does not do any more what the policy refuses: see what it does now.");
    return { code: kept, map: null };
  },
};

const EVERY_LANGUAGE = /react-aria\/dist\/private\/\w+\/intlStrings\.mjs$/;
const ENGLISH = /import (\S+) from ["]([^"]+\/en-US\.mjs)";/;

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
