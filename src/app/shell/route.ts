import { useMemo, useSyncExternalStore } from "react";

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

const subscribe = (listener: () => void) => {
  addEventListener("hashchange", listener);
  return () => removeEventListener("hashchange", listener);
};

/** The route the page is at; redraws when it changes. */
export function useRoute(): Route {
  const hash = useSyncExternalStore(subscribe, () => location.hash);
  return useMemo(() => parseRoute(hash), [hash]);
}
