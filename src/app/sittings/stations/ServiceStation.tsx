import { useEffect, useRef } from "react";
import { BEGINS_HERE } from "../../exercises/handover/parts/beginsHere";
import { VisitPanels, VisitWork } from "../../exercises/service/VisitWork";
import { useStore } from "../../parts/page/useStore";
import type { ServiceTry } from "../tries/serviceTry";

interface ServiceStationProps {
  readonly one: ServiceTry;
}

/** The door and the lock; what the visit left out is told at the end of the sitting. */
export function ServiceStationHand({ one }: ServiceStationProps) {
  const session = useStore(one.session);
  const door = useRef<HTMLElement>(null);
  // There is no dial to begin at.
  useEffect(() => door.current?.focus({ preventScroll: true }), []);
  return (
    <section ref={door} tabIndex={-1} className={`stack ${BEGINS_HERE}`} aria-label="Service visit">
      <VisitWork session={session} />
    </section>
  );
}

/** Papers, record and cautions. */
export function ServicePanels({ one }: ServiceStationProps) {
  return <VisitPanels session={useStore(one.session)} isOnce />;
}
