import type { CSSProperties, KeyboardEvent, RefObject } from "react";
import { reading } from "../../../lock/dial";
import { DialDrawing, type DialDrawingProps, reachOf } from "./DialDrawing";

interface DialProps extends DialDrawingProps {
  /** What takes the focus, and the hand. */
  readonly place: RefObject<HTMLDivElement | null>;
  /** What a screen reader says the dial stands at. */
  readonly spoken: string;
  /** Id of the text that says which keys do what. */
  readonly describedBy: string;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** A dial to be turned. Where it stands comes from above, and what turns it too. */
export function Dial({ place, spoken, describedBy, onKeyDown, ...drawing }: DialProps) {
  const { position, isOpen, ringTurn, surround } = drawing;
  const { graduations } = drawing.profile;
  return (
    <div
      ref={place}
      className={isOpen ? "dial dial-is-open" : "dial"}
      style={surround === 0 ? undefined : ({ "--dial-units": 2 * reachOf(surround) } as CSSProperties)}
      role="slider"
      tabIndex={0}
      aria-label="Dial"
      aria-valuemin={0}
      aria-valuemax={graduations}
      aria-valuenow={Math.round(reading(position - ringTurn, graduations) * 10) / 10}
      aria-valuetext={spoken}
      aria-describedby={describedBy}
      onKeyDown={onKeyDown}
    >
      <DialDrawing {...drawing} />
    </div>
  );
}
