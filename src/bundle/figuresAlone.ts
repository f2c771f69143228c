import type { Plugin } from "vite";

const TRAINING_VALUES = /\/shared\/(fitting|fitting-values|service)\.json$/;

/** Training values come with their reasons, for whoever reads the file. The page needs the figures, and does without the reasons. */
export const figuresAlone: Plugin = {
  name: "figures-alone",
  apply: "build",
  enforce: "pre",
  transform(code, id) {
    if (!TRAINING_VALUES.test(id)) return null;
    const toldNowhere = (name: string, value: unknown) => (name === "reason" || name === "about" ? undefined : value);
    return { code: JSON.stringify(JSON.parse(code, toldNowhere)), map: null };
  },
};
