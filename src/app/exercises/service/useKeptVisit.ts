import { useEffect } from "react";
import { watchWork } from "../../parts/page/underWay";
import { keepVisit } from "./keptVisit";
import type { VisitSession } from "./visitSession";

/** Whether a visit has begun and is not over. */
const isUnderWay = ({ visit, tried }: VisitSession) => tried.length > 0 && !visit.isOver;

/** Keeps a visit that is under way after every act, and says before a reload what becomes of it. */
export function useKeptVisit(session: VisitSession): void {
  useEffect(() => {
    let { visit, worked_ms } = session;
    let beganAt = Date.now() - worked_ms;
    let isStored = true;
    const keep = () => {
      if (session.visit !== visit) {
        ({ visit, worked_ms } = session);
        beganAt = Date.now() - worked_ms;
      }
      const { setup, tried } = session;
      const kept = { setup, worked_ms: Math.max(0, Date.now() - beganAt), acts: tried };
      isStored = keepVisit(isUnderWay(session) ? kept : null);
    };
    const ends = [
      session.subscribe(keep),
      watchWork(() => {
        if (!isUnderWay(session)) return null;
        return isStored
          ? "The service visit you are on is saved. Open it again, and you go on where you left it."
          : "The service visit you are on will be lost, because this browser does not store it.";
      }),
    ];
    return () => {
      for (const end of ends) end();
    };
  }, [session]);
}
