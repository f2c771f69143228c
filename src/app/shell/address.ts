/** Where the page is: `#/bench?profile=two-wheel` has the path "bench" and a query. */
export interface Route {
  readonly path: string;
  readonly query: URLSearchParams;
}

/** Reads a hash route; an empty one is the start page. */
export function parseRoute(hash: string): Route {
  const [path = "", query = ""] = hash.replace(/^#\/?/, "").split("?");
  return { path: path === "" ? "start" : path, query: new URLSearchParams(query) };
}

/** The pages, in the order of the head. */
export const PAGES = [
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

/** Names a page in an address. */
export type PagePath = (typeof PAGES)[number]["path"];

/** The page of a route; one that leads nowhere leads to the start. */
export const pageOf = ({ path }: Route): PagePath => PAGES.find((one) => one.path === path)?.path ?? "start";
