import { useSelector } from "@xstate/react";
import { useEffect, useRef } from "react";
import { memoryOf, stateOf } from "../../../parts/page/ofChart";
import { useStore } from "../../../parts/page/useStore";
import type { FittingSession } from "../../fitting/fittingSession";
import { STAGE_WORDS } from "../../fitting/fittingWords";
import { Gauges } from "../../fitting/Gauges";
import { PartsTray } from "../../fitting/PartsTray";
import { CheckList } from "../../fitting/seen/CheckList";
import { SizesNote } from "../../fitting/seen/SizesNote";
import { TurnedSection } from "../../fitting/turn/TurnedSection";

interface FitProps {
  readonly tray: FittingSession;
}

/** The lock that is fitted, in the place of its dial: the section through the door, the gauges, and the checks. */
export function FitHand({ tray }: FitProps) {
  const session = useStore(tray);
  const state = useSelector(session.chart, stateOf);
  const { checks } = useSelector(session.chart, memoryOf);
  return (
    <>
      <TurnedSection work={session} />
      <Gauges session={session} help="counts" />
      <section className="stack w-full" aria-label="Checks">
        <h2>Checks</h2>
        <p>{STAGE_WORDS[state === "declared" ? "closed" : state]}</p>
        <CheckList work={session} made={checks} isOff={state === "apart" || state === "spent"} />
      </section>
    </>
  );
}

interface PartsProps extends FitProps {
  /** Whether the work begins here: there is no dial yet that could have the focus. */
  readonly takesFocus: boolean;
}

/** The parts in the tray of the run's door. */
export function FitParts({ tray, takesFocus }: PartsProps) {
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    if (takesFocus) place.current?.focus({ preventScroll: true });
  }, [takesFocus]);
  return (
    <section ref={place} tabIndex={-1} className="order-1 plate" aria-label="Lock to fit">
      <PartsTray session={useStore(tray)} />
      <SizesNote profile={tray.profile} />
    </section>
  );
}
