import { useEffect, useRef } from "react";
import type { HandWatch } from "../../hand/sources/devices/handWatch";
import { Button } from "../../parts/controls/Button";
import { Check } from "../../parts/controls/Check";
import type { SetupSession } from "../session/setupSession";
import { focusTask } from "./StepTask";

interface ZeroAndDirectionProps {
  readonly session: SetupSession;
  readonly hasNumbers: boolean;
  readonly watch: HandWatch;
  /** Whether the device tells where it is: else nothing can be called 0. */
  readonly isHeard: boolean;
  readonly onZero: () => void;
  readonly onReverse: () => void;
  readonly onNext: () => void;
}

function Zero({ session, hasNumbers, watch, isHeard, onZero }: ZeroAndDirectionProps) {
  if (hasNumbers) return <p role="status">Turn your dial until 0 is at the index. Stop for 1 s.</p>;
  const choose = (has: boolean) => {
    watch.setNumbers(has);
    onZero();
  };
  const isThere = () => {
    session.setZero();
    watch.set();
  };
  return (
    <>
      <p role="status">
        Turn your knob to its 0, then press the button. If it has no marks, stick a strip of tape on it as its 0, and
        turn the tape to the top.
      </p>
      <Check isOn={watch.hasNumbers === true} onSwitch={choose}>
        My knob shows numbers
      </Check>
      <Button className="primary self-start" disabled={!isHeard} onClick={isThere}>
        This is 0
      </Button>
    </>
  );
}

function Direction({ session, onZero, onReverse, onNext }: ZeroAndDirectionProps) {
  const place = useRef<HTMLParagraphElement>(null);
  useEffect(() => place.current?.focus(), []);
  const { counted } = session;
  return (
    <>
      <p ref={place} tabIndex={-1}>
        0 is set.
      </p>
      <p role="status">
        {counted === null && "Now turn left, counter-clockwise, by about 10."}
        {counted === "up" && "The numbers went up. If you turned left, that is correct."}
        {counted === "down" && "The numbers went down. If you turned left, change the direction."}
      </p>
      <div className="row">
        <Button className={counted === "up" ? "primary" : ""} disabled={counted !== "up"} onClick={onNext}>
          Go on to the checks
        </Button>
        <Button className={counted === "down" ? "primary" : ""} disabled={counted === null} onClick={onReverse}>
          Change the direction
        </Button>
        <Button
          onClick={() => {
            onZero();
            focusTask();
          }}
        >
          Set 0 again
        </Button>
      </div>
    </>
  );
}

/** Says where 0 is and which way the numbers count. */
export const ZeroAndDirection = (props: ZeroAndDirectionProps) =>
  props.session.isZeroed ? <Direction {...props} /> : <Zero {...props} />;
