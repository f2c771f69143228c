import { useSyncExternalStore } from "react";
import { parseRoute, type Route } from "./address";

/**
 * The route that was asked for last. What a page writes into the address of itself is none: it stands as that says already,
 * and would be made a second time.
 */
let asked = parseRoute(location.hash);
addEventListener("hashchange", () => {
  asked = parseRoute(location.hash);
});

const subscribe = (listener: () => void) => {
  addEventListener("hashchange", listener);
  return () => removeEventListener("hashchange", listener);
};

/** The route the page is at; redraws when another is asked for. */
export const useRoute = (): Route => useSyncExternalStore(subscribe, () => asked);
