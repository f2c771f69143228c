import { hasTraces } from "../keeping/traces";
import { recalled } from "../parts/page/recall";
import { pageOf, parseRoute } from "./address";
import { putOn, THEMES } from "./theme";

/*
 * Runs before anything is drawn, as a small script of its own: puts on the chosen theme, says what of the picture in the page
 * may be seen (shell.css), and asks for the files of the page in the address beside those of the app.
 */
putOn(recalled("theme", THEMES));
const { dataset } = document.documentElement;
const page = pageOf(parseRoute(location.hash));
dataset.first = page;
if (hasTraces()) dataset.traces = "";

for (const file of document.querySelector<HTMLMetaElement>(`meta[name="files-of-${page}"]`)?.content.split(" ") ?? [])
  document.head.append(
    Object.assign(document.createElement("link"), { rel: "modulepreload", crossOrigin: "", href: file }),
  );
