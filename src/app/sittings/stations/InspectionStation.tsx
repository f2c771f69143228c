import { useEffect, useRef } from "react";
import { AnswerForm } from "../../exercises/fitting/find/AnswerForm";
import { FindHelp } from "../../exercises/fitting/find/FindHelp";
import { FitChecks } from "../../exercises/fitting/find/FitChecks";
import { FIND_CAUTIONS } from "../../exercises/fitting/find/findWords";
import { BEGINS_HERE } from "../../exercises/handover/parts/beginsHere";
import { Cautions } from "../../exercises/handover/parts/Cautions";
import { useStore } from "../../parts/page/useStore";
import type { InspectionTry } from "../tries/inspectionTry";

interface InspectionStationProps {
  readonly one: InspectionTry;
}

/** The checks: the hand begins there, for there is no dial to turn. */
export function InspectionStationHand({ one }: InspectionStationProps) {
  const session = useStore(one.session);
  const checks = useRef<HTMLElement>(null);
  useEffect(() => checks.current?.focus({ preventScroll: true }), []);
  return (
    <section ref={checks} tabIndex={-1} aria-label="Fit to judge" className={`grid w-full ${BEGINS_HERE}`}>
      <FindHelp session={session} />
      <FitChecks session={session} />
    </section>
  );
}

/** The answer; whether it is right is told at the end of the sitting. */
export function InspectionPanels({ one }: InspectionStationProps) {
  const session = useStore(one.session);
  return (
    <>
      <AnswerForm session={session} isOnce />
      <Cautions cautions={FIND_CAUTIONS} source="common practice, no source" />
    </>
  );
}
