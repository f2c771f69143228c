import { useSyncExternalStore } from "react";

function onHash(listener: () => void): () => void {
  addEventListener("hashchange", listener);
  return () => removeEventListener("hashchange", listener);
}

/** Which page is open at this moment. */
export const pathNow = (): string => /^#\/([a-z]*)/.exec(location.hash)?.[1] ?? "";

/** Which page is open now: "start", "join"; empty before any was chosen. */
export const usePagePath = (): string => useSyncExternalStore(onHash, pathNow);
