import { useSyncExternalStore } from "react";

/** Height of a row of the list of attempts, pixels; on a phone its lines break. */
const ON_DESK = 64;
const ON_PHONE = 84;

/** As in the style sheet. */
const PHONE = "(max-width: 700px)";

function subscribe(listener: () => void): () => void {
  const query = matchMedia(PHONE);
  query.addEventListener("change", listener);
  return () => query.removeEventListener("change", listener);
}

/** Height that a row of the list of attempts has on this screen, pixels. */
export function useRowHeight(): number {
  return useSyncExternalStore(subscribe, () => (matchMedia(PHONE).matches ? ON_PHONE : ON_DESK));
}
