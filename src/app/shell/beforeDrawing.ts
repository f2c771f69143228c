import { hasTraces } from "../keeping/traces";
import { newSeed } from "../parts/page/newSeed";
import { recalled } from "../parts/storage/recall";
import { pageOf, parseRoute } from "./address";
import { firstTurn, isFirstBench } from "./firstBench";
import { putOn, THEMES } from "./theme";

/*
 * Runs before anything is drawn, as a small script of its own: puts on the chosen theme, says what of the picture in the page
 * may be seen and how far its dial is turned (shell.css), asks for the files of the page in the address beside those of the
 * app, and has it said where the app does not come: the picture looks like a page that works.
 */
putOn(recalled("theme", THEMES));
const { dataset, style } = document.documentElement;
const route = parseRoute(location.hash);
const page = pageOf(route);
dataset.first = page;
if (hasTraces()) dataset.traces = "";

const tellGone = ({ target }: Event) => {
  if (target instanceof HTMLScriptElement) dataset.gone = "";
};
addEventListener("error", tellGone, true);

const seed = newSeed();
dataset.seed = `${seed}`;
if (isFirstBench(route)) {
  dataset.bench = "";
  for (const [part, degrees] of Object.entries(firstTurn(seed))) style.setProperty(`--first-${part}`, `${degrees}deg`);
}

for (const file of document.querySelector<HTMLMetaElement>(`meta[name="files-of-${page}"]`)?.content.split(" ") ?? [])
  document.head.append(
    Object.assign(document.createElement("link"), { rel: "modulepreload", crossOrigin: "", href: file }),
  );
