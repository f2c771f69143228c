/** Where the page is: `#/bench?profile=two-wheel` has the path "bench" and a query. */
export interface Route {
  readonly path: string;
  readonly query: URLSearchParams;
}

/** Reads a hash route; an empty one is the start page. */
export function parseRoute(hash: string): Route {
  const [place = "", query = ""] = hash.replace(/^#\/?/, "").split("?");
  // What comes behind a stroke is for the page itself: "#/instructor/first".
  const [path] = place.split("/");
  return { path: path || "start", query: new URLSearchParams(query) };
}

/** A page, and what the frame round it goes by. */
interface Page {
  /** Its name in an address. */
  readonly path: string;
  /** Its link in the head; null of a page that others lead to. */
  readonly label: string | null;
  /** Whether its first view has a dial. */
  readonly hasDial: boolean;
  /** Whether it makes records, only shows them, or has to do with none. */
  readonly records: "makes" | "shows" | "none";
}

/** The pages, in the order of the head. */
export const PAGES = [
  { path: "start", label: "Start", hasDial: false, records: "none" },
  { path: "bench", label: "Bench", hasDial: true, records: "makes" },
  { path: "fitting", label: "Fitting", hasDial: false, records: "makes" },
  { path: "zeroing", label: "Zeroing", hasDial: true, records: "makes" },
  { path: "handover", label: "Handover", hasDial: false, records: "makes" },
  { path: "sheets", label: "Drill sheets", hasDial: false, records: "shows" },
  { path: "sittings", label: "Sittings", hasDial: false, records: "makes" },
  { path: "logbook", label: "Logbook", hasDial: false, records: "shows" },
  { path: "desk", label: "Class desk", hasDial: false, records: "shows" },
  { path: "words", label: "Words", hasDial: false, records: "none" },
  { path: "dial", label: null, hasDial: false, records: "none" },
  { path: "join", label: null, hasDial: false, records: "none" },
  { path: "instructor", label: null, hasDial: false, records: "none" },
] as const satisfies readonly Page[];

/** Names a page in an address. */
export type PagePath = (typeof PAGES)[number]["path"];

/** The page of a route; one that leads nowhere leads to the start. */
export const pageOf = ({ path }: Route): PagePath => PAGES.find((one) => one.path === path)?.path ?? "start";

/** What the frame goes by on a page. */
export const framed = (path: PagePath): Page => PAGES.find((one) => one.path === path) ?? PAGES[0];
