import { useMemo, useSyncExternalStore } from "react";
import { parseRoute, type Route } from "./address";

const subscribe = (listener: () => void) => {
  addEventListener("hashchange", listener);
  return () => removeEventListener("hashchange", listener);
};

/** The route the page is at; redraws when it changes. */
export function useRoute(): Route {
  const hash = useSyncExternalStore(subscribe, () => location.hash);
  return useMemo(() => parseRoute(hash), [hash]);
}
