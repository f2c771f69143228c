import type { Plugin } from "vite";

const TRAINING_VALUES = /\/shared\/(fitting|fitting-values|reach|service|trouble-values)\.json$/;
/** Sizes that a profile may give are refused with their unit. */
const HAS_UNITS = /\/fitting\.json$/;

/**
 * Training values come with unit and reason, for whoever reads the file. The page needs the figures, and does without the
 * reasons, and without units that nothing shows.
 */
export const figuresAlone: Plugin = {
  name: "figures-alone",
  apply: "build",
  enforce: "pre",
  transform(code, id) {
    if (!TRAINING_VALUES.test(id)) return null;
    const leftOut = ["reason", "about", ...(HAS_UNITS.test(id) ? [] : ["unit"])];
    const toldNowhere = (name: string, value: unknown) => (leftOut.includes(name) ? undefined : value);
    return { code: JSON.stringify(JSON.parse(code, toldNowhere)), map: null };
  },
};
