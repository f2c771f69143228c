import { gapOf } from "../../../fitting/fittedLock";
import type { FittingSession } from "./fittingSession";
import { LookFromSide } from "./seen/LookFromSide";
import { RingEstimate } from "./seen/RingEstimate";

/** What the trainee reckons from readings: the ring off center, and the gap seen from the side. Only on a lock that is together. */
export function OwnReckoning({ session }: { readonly session: FittingSession }) {
  const { fit, assembly, lock, log, help } = session;
  if (fit === null) return null;
  const { perTurn, sizes } = lock;
  const face = { radius_mm: sizes.markRadius_mm, perTurn };
  return (
    <section className="panel stack" aria-label="Your own figures">
      <details>
        <summary className="py-1 phone:py-3">How far is the ring off center?</summary>
        <RingEstimate log={log} {...face} tellsHow={help === "full"} />
      </details>
      <details>
        <summary className="py-1 phone:py-3">Look from the side</summary>
        <LookFromSide
          gap_mm={gapOf(lock, assembly.spindle.length_mm, assembly.dialIn ?? 0)}
          onLooked={() => session.lookFromSide()}
          {...face}
        />
      </details>
    </section>
  );
}
