import { lazy, Suspense, useEffect, useMemo, useState } from "react";
import type { Help } from "../../dialing/advice";
import { BenchScreen } from "../bench/BenchScreen";
import { type BenchAddress, benchAddress } from "../bench/benchAddress";
import { measureEvents } from "../bench/eventCost";
import { useRemembered } from "./remembered";
import { useRoute } from "./route";
import { UpdateNotice } from "./UpdateNotice";
import "@fontsource/barlow/latin-400.css";
import "@fontsource/barlow/latin-500.css";
import "@fontsource/barlow/latin-600.css";
import "./theme.css";
import "./shell.css";

const THEMES = ["system", "light", "dark"] as const;
const PAGES = [
  { path: "bench", label: "Bench" },
  { path: "zeroing", label: "Zeroing" },
  { path: "handover", label: "Handover" },
  { path: "sheets", label: "Drill sheets" },
  { path: "sittings", label: "Sittings" },
  { path: "logbook", label: "Logbook" },
] as const;

// Fetched when first asked for, so that the first screen stays small.
const ZeroingScreen = lazy(async () => ({ default: (await import("../zeroing/ZeroingScreen")).ZeroingScreen }));
const HandoverScreen = lazy(async () => ({ default: (await import("../handover/HandoverScreen")).HandoverScreen }));
const SheetsScreen = lazy(async () => ({ default: (await import("../sheets/SheetsScreen")).SheetsScreen }));
const SittingsScreen = lazy(async () => ({ default: (await import("../sittings/SittingsScreen")).SittingsScreen }));

const LogbookScreen = lazy(async () => ({ default: (await import("../logbook/LogbookScreen")).LogbookScreen }));

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

/** A seed nobody chose: the one place where the app asks for chance. */
const newSeed = () => crypto.getRandomValues(new Uint32Array(1))[0] ?? 1;

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
      return <SittingsScreen chance={chance} sheet={query.get("sheet")} />;
    case "logbook":
      return <LogbookScreen asked={query.get("view")} />;
  }
}

/** The whole app: the head with its pages and switches, and the page asked for. */
export function App() {
  const route = useRoute();
  const { theme, change } = useTheme();
  const [sound, setSound] = useRemembered("sound", SWITCH);
  const [seed] = useState(newSeed);
  useEffect(() => {
    if (PAGES.every(({ path }) => path !== route.path)) location.replace("#/bench");
  }, [route.path]);
  const address = useMemo(() => {
    const help: Help = "full";
    measureEvents(route.query.get("measure") === "on");
    return benchAddress(route.query, { help, seed });
  }, [route.query, seed]);

  const page = PAGES.find(({ path }) => path === route.path)?.path ?? "bench";

  return (
    <>
      <header className="head">
        <b className="head-name">Gatefall</b>
        <nav aria-label="Pages">
          {PAGES.map(({ path, label }) => (
            <a key={path} href={`#/${path}`} aria-current={page === path ? "page" : undefined}>
              {label}
            </a>
          ))}
        </nav>
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
      {address.problem !== null && (
        <p className="head-problem" role="alert">
          {address.problem}
        </p>
      )}
      <Suspense fallback={<main className="workplace" />}>
        <Page page={page} address={address} query={route.query} hasSound={sound === "on"} />
      </Suspense>
      <UpdateNotice />
    </>
  );
}
