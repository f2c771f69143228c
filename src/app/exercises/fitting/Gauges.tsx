import type { Help } from "../../../dialing/advice";
import { gapOf, keywayAt, standsOutNow } from "../../../fitting/fittedLock";
import type { FittingSession } from "./fittingSession";

interface GaugesProps {
  readonly session: FittingSession;
  /** Full help tells the limits of a good fit beside each figure; silent help shows no figure that a check would tell. */
  readonly help: Help;
}

const NO_DIAL = "no dial yet";

const outText = (out_mm: number) => (out_mm < 0 ? `${(-out_mm).toFixed(1)} mm inside` : `${out_mm.toFixed(1)} mm out`);

/** What gauges at the dial and at the cam show while it is screwed in. */
export function Gauges({ session, help }: GaugesProps) {
  const { assembly, lock } = session;
  const { dialIn, spindle } = assembly;
  const { gapLeast_mm, gapMost_mm, outLeast_mm, outMost_mm } = lock.sizes;
  const isFull = help === "full";
  // As many lines as with the dial in: what is acted on below them does not move.
  const withDial = (figure: (dialIn: number) => string) => (dialIn === null ? NO_DIAL : figure(dialIn));
  return (
    <dl className="pairs w-full max-w-[760px]">
      {help !== "silent" && (
        <>
          <div>
            <dt>Gap between dial and ring</dt>
            <dd>
              {withDial((turnedIn) => `${gapOf(lock, spindle.length_mm, turnedIn).toFixed(2)} mm`)}
              {isFull && `, good from ${gapLeast_mm} to ${gapMost_mm} mm`}
            </dd>
          </div>
          <div>
            <dt>Spindle at the face of the cam</dt>
            <dd>
              {withDial(() => outText(standsOutNow(lock, assembly)))}
              {isFull && `, good from ${outText(outLeast_mm)} to ${outText(outMost_mm)}`}
            </dd>
          </div>
        </>
      )}
      <div>
        <dt>Slot of the spindle and keyways of the cam</dt>
        <dd>{withDial((turnedIn) => (keywayAt(lock, turnedIn) === null ? "none lines up" : "one lines up"))}</dd>
      </div>
    </dl>
  );
}
