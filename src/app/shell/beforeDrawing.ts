import { hasTraces } from "../keeping/traces";
import { recalled } from "../parts/page/recall";
import { pageOf, parseRoute } from "./address";
import { putOn, THEMES } from "./theme";

/*
 * Runs before anything is drawn, as a small script of its own: puts on the chosen theme, and says what of the picture in the
 * page may be seen (shell.css).
 */
putOn(recalled("theme", THEMES));
const { dataset } = document.documentElement;
dataset.first = pageOf(parseRoute(location.hash));
if (hasTraces()) dataset.traces = "";
