import { setupVerdict, stopsAsked } from "../../../realdial/setup/stopAsked";
import { Button } from "../../parts/controls/Button";
import type { SetupSession } from "../session/setupSession";
import { askText, otherTurnText, stopText, verdictText } from "../session/setupWords";
import { focusTask } from "./StepTask";

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

/** What the last stop came to, and what to do next. */
function NextStop({
  session,
  hasNumbers,
  resolution,
}: Pick<ThreeChecksProps, "session" | "hasNumbers" | "resolution">) {
  const { asked, errors, progress, perTurn } = session;
  const last = stopsAsked(perTurn)[errors.length - 1];
  return (
    <p role="status" className="font-semibold">
      {last !== undefined && `${stopText(last.number, errors.at(-1) ?? 0, resolution)}. `}
      {asked !== undefined && progress === "turning" && `Now: ${askText(asked)}`}
      {asked !== undefined && progress === "other-turn" && otherTurnText(asked, perTurn)}
      {asked === undefined && verdictText(setupVerdict(errors, resolution), hasNumbers)}
    </p>
  );
}

/** What can be done, what the stops call for first. */
function Acts({ session, isSure, resolution, onZero, onNext }: Omit<ThreeChecksProps, "hasNumbers">) {
  const { asked, errors } = session;
  const verdict = asked === undefined ? setupVerdict(errors, resolution).verdict : null;
  const lookOf = (called: typeof verdict) => (verdict === called ? "primary" : "");
  return (
    <div className="row">
      {asked === undefined ? (
        <Button className={lookOf("good")} onClick={onNext}>
          Finish the setup
        </Button>
      ) : (
        <Button disabled={!isSure} onClick={() => session.takeStop()}>
          I have stopped on {asked.number}
        </Button>
      )}
      {errors.length > 0 && (
        <Button
          className={lookOf("uneven")}
          onClick={() => {
            session.beginChecks();
            focusTask();
          }}
        >
          Check again
        </Button>
      )}
      <Button className={lookOf("shifted")} onClick={onZero}>
        Set 0 again
      </Button>
    </div>
  );
}

/** Three stops at numbers that are asked for: how far the device is off at each. */
export const ThreeChecks = (props: ThreeChecksProps) => (
  <>
    <p className="text-soft">
      {props.hasNumbers
        ? "Turn by the numbers of your dial, not by the screen. Each stop is taken once your dial rests for 1 s."
        : "Turn by the marks of your knob. If it has none, turn by the screen. Each stop is taken once the knob rests for 1 s."}
    </p>
    <Stops {...props} />
    <NextStop {...props} />
    <Acts {...props} />
  </>
);
