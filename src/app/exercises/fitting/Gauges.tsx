import { gapOf, keywayAt, standsOutNow } from "../../../fitting/fittedLock";
import type { FittingSession } from "./fittingSession";

/** What gauges at the dial and at the cam show while it is screwed in. */
export function Gauges({ session }: { readonly session: FittingSession }) {
  const { assembly, lock } = session;
  const { dialIn, spindle } = assembly;
  if (dialIn === null) return <p className="text-soft">The dial is in the tray.</p>;
  const out_mm = standsOutNow(lock, assembly);
  const linesUp = keywayAt(lock, dialIn) !== null;
  return (
    <dl className="pairs w-full max-w-[520px]">
      <div>
        <dt>Gap between dial and ring</dt>
        <dd>{gapOf(lock, spindle.length_mm, dialIn).toFixed(2)} mm</dd>
      </div>
      <div>
        <dt>Spindle at the face of the cam</dt>
        <dd>{out_mm < 0 ? `${(-out_mm).toFixed(1)} mm inside` : `${out_mm.toFixed(1)} mm out`}</dd>
      </div>
      <div>
        <dt>Slot of the spindle and keyways of the cam</dt>
        <dd>{linesUp ? "one lines up" : "none lines up"}</dd>
      </div>
    </dl>
  );
}
