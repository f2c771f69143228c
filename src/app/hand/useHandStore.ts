import { useCallback } from "react";
import { useStore } from "../parts/page/useStore";
import type { HandStore } from "./handStore";
import { useRest } from "./timePasses";

/** Redraws with every change of a session, and lets time pass over a hand that rests on its dial. */
export function useHandStore<Kind extends HandStore>(session: Kind): Kind {
  useRest(useCallback((at) => session.rest(at), [session]));
  return useStore(session);
}
