import { useState } from "react";
import type { Assembly } from "../../../../fitting/assembly";
import { fitOf } from "../../../../fitting/fit";
import type { FitCheck } from "../../../../fitting/fitCheck";
import { checksOf } from "../../../../fitting/fitChecks";
import { gapAround } from "../../../../fitting/fittedLock";
import { checkLabel } from "../../../../fitting/fitWords";
import { setDepthGauge } from "../../../../fitting/instruments/depthGauge";
import { Button } from "../../../parts/controls/Button";
import { BoltDraw } from "../instruments/BoltDraw";
import { DepthGauge } from "../instruments/DepthGauge";
import { FeelerGauge } from "../instruments/FeelerGauge";
import { type BegunCheck, type CheckedLock, isWorked } from "../instruments/workedCheck";
import { observationText } from "./observationWords";

interface CheckListProps {
  readonly work: CheckedLock;
  readonly made: readonly FitCheck[];
  /** While there is nothing to check. */
  readonly isOff?: boolean;
}

/** An instrument in hand, on the parts as they were when it was taken. */
interface InHand extends BegunCheck {
  readonly of: Assembly;
}

interface InstrumentProps {
  readonly inHand: InHand;
  readonly work: CheckedLock;
  readonly onDone: () => void;
}

/** The instrument of a check that a hand has begun. */
function Instrument({ inHand, work, onDone }: InstrumentProps) {
  const { seen, of } = inHand;
  const { assembly, lock } = work;
  // A part that was moved moved the instrument.
  if (of !== assembly) return null;
  const fit = fitOf(assembly, lock);
  if (seen.kind === "bolt") return seen.drags === null || fit === null ? null : <BoltDraw fit={fit} lock={lock} />;
  if (seen.kind === "depth") return <DepthGauge set={setDepthGauge(seen.out_mm)} onRead={onDone} />;
  return <FeelerGauge gapAt={(part) => gapAround(assembly, lock, part)} onFound={onDone} />;
}

/** A button for each check, the instrument that is in hand, and what the checks that were made have shown. */
export function CheckList({ work, made, isOff = false }: CheckListProps) {
  const { assembly, log } = work;
  const [inHand, setInHand] = useState<InHand | null>(null);
  const press = (check: FitCheck) => {
    const begun = isWorked(check) || check === "bolt" ? work.begin(check) : null;
    setInHand(begun && { ...begun, of: work.assembly });
    // What the bolt does is told at once, and felt by whoever draws it.
    if (check === "bolt") begun?.take();
    else if (!isWorked(check)) work.check(check);
  };
  return (
    <>
      <div className="row">
        {checksOf(assembly).map((check) => (
          <Button key={check} className="slim" disabled={isOff} onClick={() => press(check)}>
            {checkLabel(check, assembly)}
            {made.includes(check) && <span aria-hidden="true"> ✓</span>}
            {made.includes(check) && <span className="visually-hidden">, made</span>}
          </Button>
        ))}
      </div>
      {inHand !== null && !isOff && (
        <Instrument
          key={inHand.seen.kind}
          inHand={inHand}
          work={work}
          onDone={() => {
            inHand.take();
            setInHand(null);
          }}
        />
      )}
      {/* Buttons take more than a phone's screen: what the pressed one showed stays in view at its foot. */}
      <p
        className={`min-h-[1.45em] font-semibold ${log.length > 0 ? "bg-paper phone:sticky phone:z-3 phone:bottom-0 phone:py-3" : ""}`}
        role="status"
      >
        {log[0] === undefined ? "" : observationText(log[0])}
      </p>
      {log.length > 1 && (
        <ol className="plain stack gap-1 text-small text-soft" aria-label="Earlier checks, latest first">
          {log.slice(1).map((seen, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a line of a log has no other name
            <li key={log.length - k}>{observationText(seen)}</li>
          ))}
        </ol>
      )}
    </>
  );
}
