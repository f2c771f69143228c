import type { Plugin } from "vite";

const DRAWING = /react-dom-client\.production\.js$/;
const MARK = /HydrationMismatchException = Error\(formatProdErrorMessage\(519\)\)/;

/**
 * React makes one error while it is loaded, as a mark to throw later. A browser that is watched by developers' tools, as it is
 * while Lighthouse measures, notes at once where each error was made, and compiles all of React a second time for it. Nobody
 * reads where the mark was made, so it has no stack. A browser that is not watched gains nothing by it.
 */
export const markWithoutStack: Plugin = {
  name: "mark-without-stack",
  apply: "build",
  transform(code, id) {
    if (!DRAWING.test(id)) return null;
    const kept = code.replace(MARK, "HydrationMismatchException = { message: formatProdErrorMessage(519) }");
    if (kept === code) this.error("React does not make its mark any more as it did: see what it does now.");
    return { code: kept, map: null };
  },
};
