import { useEffect, useRef } from "react";
import { Checks } from "../../exercises/fitting/Checks";
import { CAUTION_SOURCE, CAUTIONS } from "../../exercises/fitting/fittingCautions";
import { Gauges } from "../../exercises/fitting/Gauges";
import { PartsTray } from "../../exercises/fitting/PartsTray";
import { TurnedSection } from "../../exercises/fitting/turn/TurnedSection";
import { BEGINS_HERE } from "../../exercises/handover/parts/beginsHere";
import { Cautions } from "../../exercises/handover/parts/Cautions";
import { useStore } from "../../parts/page/useStore";
import type { FittingTry } from "../tries/fittingTry";

interface FittingStationProps {
  readonly one: FittingTry;
}

/** Where there is height for it, drawing and gauges stay while parts and checks below are acted on. */
const STAYS_IN_VIEW =
  "w-full stack gap-3 pb-2 bg-paper [@media(min-width:701px)_and_(min-height:700px)]:sticky top-0 z-2";

/** The lock as far as it is put together, and the checks; what is wrong with it is told at the end of the sitting. */
export function FittingStationHand({ one }: FittingStationProps) {
  const session = useStore(one.session);
  return (
    <>
      <div className={`${STAYS_IN_VIEW} phone:contents`}>
        <div className="w-full phone:px-edge">
          <TurnedSection work={session} />
        </div>
        <div className="w-full bg-paper phone:sticky phone:z-3 phone:top-[56px] phone:px-edge">
          <Gauges session={session} help={one.setup.station.help} />
        </div>
      </div>
      <section className="w-full phone:order-1 phone:px-edge">
        <Checks session={session} isOnce />
      </section>
    </>
  );
}

/** The parts in the tray: the hand begins there, for there is no dial on the door yet. */
export function FittingPanels({ one }: FittingStationProps) {
  const session = useStore(one.session);
  const tray = useRef<HTMLElement>(null);
  useEffect(() => tray.current?.focus({ preventScroll: true }), []);
  return (
    <>
      <section
        ref={tray}
        tabIndex={-1}
        aria-label="Dial to fit"
        className={`[&_.button]:scroll-mt-[144px] ${BEGINS_HERE}`}
      >
        <PartsTray session={session} />
      </section>
      <div className="phone:order-2">
        <Cautions cautions={CAUTIONS} source={CAUTION_SOURCE} />
      </div>
    </>
  );
}
