import { setupVerdict, stopsAsked } from "../../../realdial/setup/stopAsked";
import { Button } from "../../parts/controls/Button";
import type { SetupSession } from "../session/setupSession";
import { askText, stopText, verdictText } from "../session/setupWords";

interface ThreeChecksProps {
  readonly session: SetupSession;
  readonly hasNumbers: boolean;
  readonly isSure: boolean;
  /** The smallest step of the device, graduations. */
  readonly resolution: number;
  readonly onZero: () => void;
  readonly onNext: () => void;
}

/** The stops that were made, and the one to make now. */
function Stops({ session, resolution }: Pick<ThreeChecksProps, "session" | "resolution">) {
  return (
    <ol className="pl-5">
      {stopsAsked(session.perTurn).map((stop, k) => {
        const error = session.errors[k];
        return (
          <li key={stop.number} className={error === undefined && k > session.errors.length ? "text-soft" : ""}>
            {error === undefined ? askText(stop) : stopText(stop.number, error, resolution)}
          </li>
        );
      })}
    </ol>
  );
}

/** Three stops at numbers that are asked for: how far the device is off at each. */
export function ThreeChecks({ session, hasNumbers, isSure, resolution, onZero, onNext }: ThreeChecksProps) {
  const { asked, errors, progress } = session;
  const last = errors.length > 0 ? stopsAsked(session.perTurn)[errors.length - 1] : undefined;
  return (
    <>
      <p className="text-soft">
        {hasNumbers
          ? "Turn by the numbers of your dial, not by the screen. Each stop is taken once your dial rests for 1 s."
          : "Turn by the marks of your knob. If it has none, turn by the screen. Each stop is taken once the knob rests for 1 s."}
      </p>
      <Stops session={session} resolution={resolution} />
      <p role="status" className="font-semibold">
        {last !== undefined && `${stopText(last.number, errors.at(-1) ?? 0, resolution)}. `}
        {asked !== undefined && progress === "turning" && `Now: ${askText(asked)}`}
        {asked !== undefined &&
          progress === "other-turn" &&
          `You came to ${asked.number} by the other turn. Go 10 past it, and come back ${asked.turn}.`}
        {asked === undefined && verdictText(setupVerdict(errors, resolution), hasNumbers)}
      </p>
      <div className="row">
        {asked === undefined ? (
          <Button className="primary" onClick={onNext}>
            Go on
          </Button>
        ) : (
          <Button disabled={!isSure} onClick={() => session.takeStop()}>
            I have stopped on {asked.number}
          </Button>
        )}
        {errors.length > 0 && <Button onClick={() => session.beginChecks()}>Check again</Button>}
        <Button onClick={onZero}>Set 0 again</Button>
      </div>
    </>
  );
}
