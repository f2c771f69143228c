import { useEffect, useMemo, useState } from "react";
import type { Help } from "../../dialing/advice";
import { BenchScreen } from "../exercises/bench/BenchScreen";
import { type BenchAddress, benchAddress, unknownSettings } from "../exercises/bench/benchAddress";
import { measureEvents } from "../exercises/bench/eventCost";
import { NotSavedLine } from "../keeping/NotSavedLine";
import { LinkRow } from "../parts/LinkRow";
import { fetchedLater } from "../parts/page/fetchedLater";
import { newSeed } from "../parts/page/newSeed";
import { useRemembered } from "../parts/page/remembered";
import { AddressProblems } from "./AddressProblems";
import { ErrorBoundary } from "./ErrorBoundary";
import { fetchAtIdle } from "./fetchAtIdle";
import { useRoute } from "./route";
import { SkipLink } from "./SkipLink";
import { UpdateNotice } from "./UpdateNotice";
import "@fontsource/barlow/latin-400.css";
import "@fontsource/barlow/latin-500.css";
import "@fontsource/barlow/latin-600.css";
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

interface PageProps {
  readonly page: (typeof PAGES)[number]["path"];
  readonly address: BenchAddress;
  readonly query: URLSearchParams;
  readonly hasSound: boolean;
}

/** The page asked for. */
function Page({ page, address, query, hasSound }: PageProps) {
  const { chance } = address;
  switch (page) {
    case "start":
      return <StartScreen />;
    case "words":
      return <WordsScreen asked={query.get("word")} />;
    case "bench":
      return <BenchScreen address={address} hasSound={hasSound} />;
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
  const address = useMemo(() => {
    const help: Help = "full";
    measureEvents(route.query.get("measure") === "on");
    const read = benchAddress(route.query, { help, seed });
    // Other pages have settings of their own.
    const unknown = route.path === "bench" ? unknownSettings(route.query) : [];
    return { ...read, problems: [...unknown, ...read.problems] };
  }, [route.path, route.query, seed]);

  useEffect(() => fetchAtIdle([fetchStart, fetchWords]), []);

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
      {page !== "bench" && <AddressProblems problems={address.problems} />}
      <ErrorBoundary place={`${page}?${route.query}`}>
        <Page page={page} address={address} query={route.query} hasSound={sound === "on"} />
      </ErrorBoundary>
      {MAKES_RECORDS.has(page) && <NotSavedLine />}
      <UpdateNotice />
    </>
  );
}
