import { useEffect, useMemo, useState } from "react";
import { type Chance, seededChance } from "../../statistics/chance";
import { startKeeping } from "../keeping/keeping";
import { NotSavedLine } from "../keeping/NotSavedLine";
import { hasTraces } from "../keeping/traces";
import { LinkRow } from "../parts/LinkRow";
import { newSeed } from "../parts/page/newSeed";
import { useRemembered } from "../parts/page/remembered";
import { useSound } from "../parts/page/useSound";
import { ErrorBoundary } from "./ErrorBoundary";
import { fetchAhead } from "./fetchAhead";
import { parseRoute, useRoute } from "./route";
import { SkipLink } from "./SkipLink";
import { AddressProblems, PAGES, type PagePath, pageOf, SCREENS, sittingsForgotten } from "./screens";
import { UpdateNotice } from "./UpdateNotice";
import "@fontsource/barlow/latin-400.css";
import "@fontsource/barlow/latin-500.css";
import "@fontsource/barlow/latin-600.css";
import "./roomStyles";
import "./typeface.css";
import "./theme.css";
import "./shell.css";

const THEMES = ["system", "light", "dark"] as const;
/** Pages where records are made; the logbook itself says more of how safe they are. */
const MAKES_RECORDS: ReadonlySet<string> = new Set(["bench", "zeroing", "handover", "sittings"]);

/** Pages that neither make records nor, at a first visit, show any. */
const KEEPS_NOTHING: ReadonlySet<string> = new Set(["start", "words"]);

const PAGE_LINKS = PAGES.map(({ path, label }) => ({ key: path, label, href: `#/${path}` }));

function useTheme() {
  const [theme, setTheme] = useRemembered("theme", THEMES);
  useEffect(() => {
    if (theme === "system") delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  }, [theme]);
  const next = THEMES[(THEMES.indexOf(theme) + 1) % THEMES.length] ?? "system";
  return { theme, change: () => setTheme(next) };
}

/** The seed that an address asks for; null where it asks for none that is a number. */
function askedSeed(query: URLSearchParams): number | null {
  const seed = Number(query.get("seed") ?? Number.NaN);
  return Number.isFinite(seed) ? seed : null;
}

interface PageProps {
  readonly page: PagePath;
  readonly chance: Chance;
  readonly seed: number;
  readonly query: URLSearchParams;
}

/** The page asked for. */
function Page({ page, chance, seed, query }: PageProps) {
  switch (page) {
    case "start":
      return <SCREENS.start />;
    case "words":
      return <SCREENS.words asked={query.get("word")} />;
    case "bench":
      return <SCREENS.bench query={query} seed={seed} />;
    case "zeroing":
      return <SCREENS.zeroing key={`${query}`} chance={chance} isSilent={query.get("help") === "silent"} />;
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
  }
}

/** The whole app: the head with its pages and switches, and the page asked for. */
export function App() {
  const route = useRoute();
  const { theme, change } = useTheme();
  const sound = useSound();
  const [seed] = useState(newSeed);
  useEffect(() => {
    if (PAGES.every(({ path }) => path !== route.path)) location.replace("#/start");
  }, [route.path]);
  // A new page or a new address begins with a chance of its own.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the path is what makes it new
  const chance = useMemo(() => seededChance(askedSeed(route.query) ?? seed), [route.path, route.query, seed]);

  const page = pageOf(route);
  useEffect(() => fetchAhead((hash) => SCREENS[pageOf(parseRoute(hash))].fetchAhead()), []);
  useEffect(() => {
    if (!KEEPS_NOTHING.has(page) || hasTraces()) startKeeping();
  }, [page]);

  return (
    <>
      <header className="head">
        <SkipLink hasDial={page === "bench" || page === "zeroing"} />
        <b className="head-name">Gatefall</b>
        <LinkRow label="Pages" links={PAGE_LINKS} current={page} />
        <div className="head-switches">
          <button type="button" className="button" aria-pressed={sound.isOn} onClick={sound.toggle}>
            Sound {sound.isOn ? "on" : "off"}
          </button>
          <button type="button" className="button" onClick={change} title="Change between light and dark">
            Theme: {theme}
          </button>
        </div>
      </header>
      {page !== "bench" && route.query.size > 0 && <AddressProblems query={route.query} seed={seed} />}
      <ErrorBoundary place={`${page}?${route.query}`}>
        <Page page={page} chance={chance} seed={seed} query={route.query} />
      </ErrorBoundary>
      {MAKES_RECORDS.has(page) && <NotSavedLine />}
      <UpdateNotice />
    </>
  );
}
