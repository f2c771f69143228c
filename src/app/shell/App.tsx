import { type ReactElement, useEffect, useMemo, useState } from "react";
import { type Chance, seededChance } from "../../statistics/chance";
import { startKeeping } from "../keeping/keeping";
import { NotSavedLine } from "../keeping/NotSavedLine";
import { hasTraces } from "../keeping/traces";
import { fetchDialog } from "../parts/controls/Dialog";
import { classServer } from "../parts/page/classServer";
import { fetchedLater } from "../parts/page/fetchedLater";
import { newSeed } from "../parts/page/newSeed";
import { workUnderWay } from "../parts/page/underWay";
import { whenIdle } from "../parts/page/whenIdle";
import { framed, PAGES, type PagePath, pageOf, parseRoute } from "./address";
import { ErrorBoundary } from "./ErrorBoundary";
import { fetchAhead } from "./fetchAhead";
import { Head } from "./Head";
import { useRoute } from "./route";
import { AddressProblems, SCREENS, SchoolLine, sittingsForgotten } from "./screens";
import "@fontsource/barlow/latin-400.css";
import "@fontsource/barlow/latin-500.css";
import "@fontsource/barlow/latin-600.css";
import "./elements.css";
import "./roomStyles";
import "./typeface.css";
import "./theme.css";
import "./shell.css";
import "./looks.css";

/** The seed that an address asks for; null where it asks for none that is a number. */
function askedSeed(query: URLSearchParams): number | null {
  const seed = Number(query.get("seed") ?? Number.NaN);
  return Number.isFinite(seed) ? seed : null;
}

/** The seed of this visit: what runs before anything is drawn has chosen it for the picture in the page, where there is one. */
const visitSeed = (): number => Number(document.documentElement.dataset.seed ?? newSeed());

interface PageProps {
  readonly page: PagePath;
  readonly chance: Chance;
  readonly seed: number;
  readonly query: URLSearchParams;
}

/** The page asked for. With what it gives written out, the compiler finds a page that is left out. */
function Page({ page, chance, seed, query }: PageProps): ReactElement {
  switch (page) {
    case "start":
      return <SCREENS.start />;
    case "words":
      return <SCREENS.words asked={query.get("word")} />;
    case "bench":
      return <SCREENS.bench query={query} seed={seed} />;
    case "fitting":
      return <SCREENS.fitting key={`${query}`} chance={chance} query={query} />;
    case "zeroing":
      return <SCREENS.zeroing key={`${query}`} chance={chance} query={query} />;
    case "handover":
      return <SCREENS.handover query={query} chance={chance} />;
    case "sheets":
      return <SCREENS.sheets query={query} />;
    case "sittings":
      return <SCREENS.sittings seed={query.get("seed")} sheet={query.get("sheet")} record={query.get("record")} />;
    case "logbook":
      return <SCREENS.logbook asked={query.get("view")} sittingsForgotten={sittingsForgotten} />;
    case "desk":
      return <SCREENS.desk />;
    case "dial":
      return <SCREENS.dial query={query} />;
    case "join":
      return <SCREENS.join card={query.get("card")} />;
    case "instructor":
      return <SCREENS.instructor query={query} />;
  }
}

/** What tells of versions, and stores the app for use offline: it waits until nobody waits for the page. */
const UpdateNotice = fetchedLater(
  async () => {
    await new Promise<void>(whenIdle);
    return (await import("./UpdateNotice")).UpdateNotice;
  },
  null,
  () => null,
);

/** The whole app: the head with its pages and switches, and the page asked for. */
export function App() {
  const route = useRoute();
  const [seed] = useState(visitSeed);
  useEffect(() => {
    if (PAGES.every(({ path }) => path !== route.path)) location.replace("#/start");
  }, [route.path]);
  // A new page or a new address begins with a chance of its own.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the path is what makes it new
  const chance = useMemo(() => seededChance(askedSeed(route.query) ?? seed), [route.path, route.query, seed]);

  const page = pageOf(route);
  useEffect(
    () => fetchAhead({ page: (hash) => SCREENS[pageOf(parseRoute(hash))].fetchAhead(), dialog: fetchDialog }),
    [],
  );
  useEffect(() => {
    if (hasTraces()) return startKeeping();
    // What stores records is there before a hand is: the server may be gone by then.
    return framed(page).records === "none" ? undefined : whenIdle(startKeeping);
  }, [page]);

  return (
    <>
      <Head page={page} />
      {classServer() !== null && <SchoolLine />}
      {page !== "bench" && route.query.size > 0 && <AddressProblems query={route.query} seed={seed} />}
      <ErrorBoundary place={`${page}?${route.query}`}>
        <Page page={page} chance={chance} seed={seed} query={route.query} />
      </ErrorBoundary>
      {/* The logbook itself says more of how safe they are. */}
      {framed(page).records === "makes" && <NotSavedLine />}
      <UpdateNotice underWay={workUnderWay} />
    </>
  );
}
