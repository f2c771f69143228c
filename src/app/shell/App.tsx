import { useEffect, useMemo, useState } from "react";
import { type Chance, seededChance } from "../../statistics/chance";
import { NotSavedLine } from "../keeping/NotSavedLine";
import { LinkRow } from "../parts/LinkRow";
import { fetchedLater } from "../parts/page/fetchedLater";
import { newSeed } from "../parts/page/newSeed";
import { useRemembered } from "../parts/page/remembered";
import { ErrorBoundary } from "./ErrorBoundary";
import { fetchAtIdle } from "./fetchAtIdle";
import { useRoute } from "./route";
import { SkipLink } from "./SkipLink";
import { UpdateNotice } from "./UpdateNotice";
import "@fontsource/barlow/latin-400.css";
import "@fontsource/barlow/latin-500.css";
import "@fontsource/barlow/latin-600.css";
import "./roomStyles";
import "./typeface.css";
import "./theme.css";
import "./shell.css";

const THEMES = ["system", "light", "dark"] as const;
const PAGES = [
  { path: "start", label: "Start" },
  { path: "bench", label: "Bench" },
  { path: "zeroing", label: "Zeroing" },
  { path: "handover", label: "Handover" },
  { path: "sheets", label: "Drill sheets" },
  { path: "sittings", label: "Sittings" },
  { path: "logbook", label: "Logbook" },
  { path: "desk", label: "Class desk" },
  { path: "words", label: "Words" },
] as const;

/** Pages where records are made; the logbook itself says more of how safe they are. */
const MAKES_RECORDS: ReadonlySet<string> = new Set(["bench", "zeroing", "handover", "sittings"]);

const PAGE_LINKS = PAGES.map(({ path, label }) => ({ key: path, label, href: `#/${path}` }));

const EMPTY = <main className="workplace" />;

// Fetched when first asked for, so that the first screen stays small.
const fetchBench = async () => (await import("../exercises/bench/BenchScreen")).BenchScreen;
const BenchScreen = fetchedLater(fetchBench, EMPTY);
const AddressProblems = fetchedLater(async () => (await import("./AddressProblems")).AddressProblems, null);
const ZeroingScreen = fetchedLater(
  async () => (await import("../exercises/zeroing/ZeroingScreen")).ZeroingScreen,
  EMPTY,
);
const HandoverScreen = fetchedLater(
  async () => (await import("../exercises/handover/HandoverScreen")).HandoverScreen,
  EMPTY,
);
const SheetsScreen = fetchedLater(async () => (await import("../sheets/SheetsScreen")).SheetsScreen, EMPTY);
const SittingsScreen = fetchedLater(async () => (await import("../sittings/SittingsScreen")).SittingsScreen, EMPTY);
const LogbookScreen = fetchedLater(async () => {
  // The database opens while the screen is still fetched.
  import("../keeping/currentLogbook").then(({ currentLogbook }) => currentLogbook()).catch(() => undefined);
  return (await import("../logbook/LogbookScreen")).LogbookScreen;
}, EMPTY);

/** The sittings go with their person, and the logbook knows no other screen. */
const sittingsForgotten = async () => (await import("../sittings/currentSitting")).forgetSittings;

const DeskScreen = fetchedLater(async () => (await import("../desk/DeskScreen")).DeskScreen, EMPTY);

// Where a visit without an address begins: asked for while the rest of the app is still read.
const fetchStart = async () => (await import("../start/StartScreen")).StartScreen;
const fetchWords = async () => (await import("../words/WordsScreen")).WordsScreen;
const StartScreen = fetchedLater(fetchStart, EMPTY);
const WordsScreen = fetchedLater(fetchWords, EMPTY);

const SWITCH = ["off", "on"] as const;

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
  readonly page: (typeof PAGES)[number]["path"];
  readonly chance: Chance;
  readonly seed: number;
  readonly query: URLSearchParams;
  readonly hasSound: boolean;
}

/** The page asked for. */
function Page({ page, chance, seed, query, hasSound }: PageProps) {
  switch (page) {
    case "start":
      return <StartScreen />;
    case "words":
      return <WordsScreen asked={query.get("word")} />;
    case "bench":
      return <BenchScreen query={query} seed={seed} hasSound={hasSound} />;
    case "zeroing":
      return (
        <ZeroingScreen key={`${query}`} chance={chance} isSilent={query.get("help") === "silent"} hasSound={hasSound} />
      );
    case "handover":
      return <HandoverScreen query={query} chance={chance} hasSound={hasSound} />;
    case "sheets":
      return <SheetsScreen query={query} />;
    case "sittings":
      return <SittingsScreen seed={query.get("seed")} sheet={query.get("sheet")} record={query.get("record")} />;
    case "logbook":
      return <LogbookScreen asked={query.get("view")} sittingsForgotten={sittingsForgotten} />;
    case "desk":
      return <DeskScreen />;
  }
}

/** The whole app: the head with its pages and switches, and the page asked for. */
export function App() {
  const route = useRoute();
  const { theme, change } = useTheme();
  const [sound, setSound] = useRemembered("sound", SWITCH);
  const [seed] = useState(newSeed);
  useEffect(() => {
    if (PAGES.every(({ path }) => path !== route.path)) location.replace("#/start");
  }, [route.path]);
  // A new page or a new address begins with a chance of its own.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the path is what makes it new
  const chance = useMemo(() => seededChance(askedSeed(route.query) ?? seed), [route.path, route.query, seed]);

  useEffect(() => fetchAtIdle([fetchStart, fetchBench, fetchWords]), []);

  const page = PAGES.find(({ path }) => path === route.path)?.path ?? "start";

  return (
    <>
      <header className="head">
        <SkipLink hasDial={page === "bench" || page === "zeroing"} />
        <b className="head-name">Gatefall</b>
        <LinkRow label="Pages" links={PAGE_LINKS} current={page} />
        <div className="head-switches">
          <button
            type="button"
            className="button"
            aria-pressed={sound === "on"}
            onClick={() => setSound(sound === "on" ? "off" : "on")}
          >
            Sound {sound}
          </button>
          <button type="button" className="button" onClick={change} title="Change between light and dark">
            Theme: {theme}
          </button>
        </div>
      </header>
      {page !== "bench" && route.query.size > 0 && <AddressProblems query={route.query} seed={seed} />}
      <ErrorBoundary place={`${page}?${route.query}`}>
        <Page page={page} chance={chance} seed={seed} query={route.query} hasSound={sound === "on"} />
      </ErrorBoundary>
      {MAKES_RECORDS.has(page) && <NotSavedLine />}
      <UpdateNotice />
    </>
  );
}
