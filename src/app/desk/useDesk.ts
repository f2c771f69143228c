import { useSyncExternalStore } from "react";
import { ClassDesk } from "./classDesk";

/** One desk a tab: a look at another page does not clear it, closing the tab does. */
const desk = new ClassDesk();

/** The desk of this tab, redrawn with every change of it. */
export function useDesk(): ClassDesk {
  useSyncExternalStore(desk.subscribe, () => desk.version);
  return desk;
}
