import { useSelector } from "@xstate/react";
import { useEffect, useRef } from "react";
import { HelpChoice, type HelpOffer } from "../../../hand/HelpChoice";
import { memoryOf, stateOf } from "../../../parts/page/ofChart";
import { useStore } from "../../../parts/page/useStore";
import type { FittingSession } from "../../fitting/fittingSession";
import { STAGE_WORDS } from "../../fitting/fittingWords";
import { Gauges } from "../../fitting/Gauges";
import { PartsTray } from "../../fitting/PartsTray";
import { CheckList } from "../../fitting/seen/CheckList";
import { SizesNote } from "../../fitting/seen/SizesNote";
import { TurnedSection } from "../../fitting/turn/TurnedSection";
import { BEGINS_HERE } from "../parts/beginsHere";

/** On a phone gauges stay in view below the strip while the dial is screwed in and out. */
const GAUGES_IN_VIEW = "w-full bg-paper phone:sticky phone:z-3 phone:top-[56px]";

interface FitProps {
  readonly tray: FittingSession;
}

interface HandProps extends FitProps {
  /** Whether this is a try of a sitting, whose sheet sets the help. */
  readonly isOnce: boolean;
}

/** How much the gauges tell. */
export const GAUGE_HELPS: readonly HelpOffer[] = [
  { help: "full", label: "Full", title: "Full help: gauges with their limits" },
  { help: "counts", label: "Counts", title: "Counts: gauges without limits" },
  { help: "silent", label: "Silent", title: "Silent: no gauges; measure by your own checks" },
];

/**
 * The lock that is fitted, in the place of its dial: the section through the door, the gauges, and, once it is together,
 * the checks. On a phone these come after the parts.
 */
export function FitHand({ tray, isOnce }: HandProps) {
  const session = useStore(tray);
  const state = useSelector(session.chart, stateOf);
  const { checks } = useSelector(session.chart, memoryOf);
  const isTogether = state !== "apart" && state !== "spent";
  return (
    <>
      <TurnedSection work={session} />
      {!isOnce && <HelpChoice help={session.help} onHelp={(help) => session.setHelp(help)} offers={GAUGE_HELPS} />}
      <div className={GAUGES_IN_VIEW}>
        <Gauges session={session} help={session.help} />
      </div>
      <section className="stack w-full phone:order-1" aria-label="Checks">
        <h2>Checks</h2>
        <p>{STAGE_WORDS[state === "declared" ? "closed" : state]}</p>
        {isTogether && <CheckList work={session} made={checks} />}
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
    <section
      ref={place}
      tabIndex={-1}
      className={`plate [&_.button]:scroll-mt-[144px] ${BEGINS_HERE}`}
      aria-label="Lock to fit"
    >
      <PartsTray session={useStore(tray)} />
      <div className="px-edge pb-4">
        <SizesNote profile={tray.profile} />
      </div>
    </section>
  );
}
