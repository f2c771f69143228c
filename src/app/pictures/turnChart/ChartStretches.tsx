import { faceNumber } from "../../../lock/dial";
import type { Stretch } from "./chartEvents";
import type { ChartFrame } from "./chartFrame";
import { type Lock, stretchLabel } from "./chartWords";
import { spread } from "./placeLabels";
import { TURN_LOOK } from "./turnLook";

interface Props {
  readonly stretches: readonly Stretch[];
  readonly frame: ChartFrame;
  readonly lock: Lock;
}

/** Beside the rows, which way and to which number they go; in the rows, a guide at that number. */
export function ChartStretches({ stretches, frame, lock }: Props) {
  const { left, bottom, yOf, xOf } = frame;
  const middles = stretches.map(({ fromTurns, toTurns }) => (yOf(fromTurns) + yOf(toTurns)) / 2);
  const heights = spread(middles, 12, bottom - 4);
  return (
    <>
      {stretches.map((stretch, index) => {
        const { step, turn } = stretch;
        const [y1, y2] = [yOf(stretch.fromTurns), yOf(stretch.toTurns)];
        const number = step === null ? undefined : lock.combination[step];
        const x = number === undefined ? null : xOf(faceNumber(number, frame.face.perTurn, frame.face.numbersIncrease));
        return (
          <g key={stretch.fromTurns} className={TURN_LOOK[turn].className}>
            {x !== null && (
              <line className="stroke-line" strokeWidth={1} strokeDasharray="1 3" x1={x} x2={x} y1={y1} y2={y2} />
            )}
            <line
              className="stroke-current"
              strokeWidth={TURN_LOOK[turn].strokeWidth}
              x1={left - 9}
              x2={left - 9}
              y1={y1 + 1.5}
              y2={Math.max(y1 + 2.5, y2 - 1.5)}
            />
            <text x={left - 14} y={heights[index]} dy="0.35em" textAnchor="end">
              {stretchLabel(stretch, lock)}
            </text>
          </g>
        );
      })}
    </>
  );
}
