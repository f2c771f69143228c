import { useRef, useState } from "react";
import type { Fit } from "../../../../fitting/fit";
import type { LockToFit } from "../../../../fitting/fittedLock";
import { type BoltPull, pulled, released, THROWN, travelOf } from "../../../../fitting/instruments/boltPull";
import { graduationsText } from "../../../../wording/amountWords";
import { useTurning } from "./useTurning";

interface BoltDrawProps {
  readonly fit: Pick<Fit, "drag" | "binding">;
  readonly lock: Pick<LockToFit, "perTurn">;
}

/** Units of the drawing: its size, how far the bolt goes, and where strike and dial are. */
const WIDE = 460;
const HIGH = 132;
const THROW = 60;
const STRIKE = 190;
const DIAL = { x: 370, y: 66, radius: 56 };

/** What an eye sees of the bolt, and a hand feels. */
function pullText({ hand, dial }: BoltPull, travel: number): string {
  const ahead = Math.abs(hand - dial);
  const far =
    dial >= travel
      ? "The bolt is drawn."
      : dial <= 0
        ? "The bolt is thrown."
        : `The bolt has come ${Math.round((100 * dial) / travel)} % of its way.`;
  return `${far} ${ahead < 0.05 ? "Hand and dial are together." : `The hand is ${graduationsText(ahead.toFixed(1))} ahead of the dial.`}`;
}

/** A hand that draws the bolt of the lock and throws it again: how far it gets ahead before the bolt comes. */
export function BoltDraw({ fit, lock: { perTurn } }: BoltDrawProps) {
  const [pull, setPull] = useState(THROWN);
  const slider = useRef<HTMLDivElement>(null);
  const travel = travelOf(perTurn);
  const grip = useTurning(slider, {
    perTurn,
    position: () => -pull.hand,
    turn: (by) => setPull((now) => pulled(now, -by, fit.drag + fit.binding, travel)),
    letGo: () => setPull(released),
  });
  const text = pullText(pull, travel);
  const bolt = STRIKE - THROW + 14 - (THROW * pull.dial) / travel;
  const line = (at: number, from: number) => {
    const angle = (2 * Math.PI * at) / perTurn;
    const end = (radius: number) => `${DIAL.x + radius * Math.sin(angle)} ${DIAL.y - radius * Math.cos(angle)}`;
    return `M${end(from)}L${end(DIAL.radius)}`;
  };
  return (
    <section className="stack" aria-label="Draw the bolt">
      <div
        ref={slider}
        role="slider"
        tabIndex={0}
        aria-label="Draw of the bolt"
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={travel}
        aria-valuenow={Number(pull.dial.toFixed(1))}
        aria-valuetext={text}
      >
        <svg viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true" className="fitting-section w-full max-w-[480px]">
          <rect className="fill-metal-3 stroke-line" x={STRIKE} y={8} width={18} height={HIGH - 16} />
          <rect className="fill-paper" x={STRIKE} y={34} width={18} height={64} />
          <rect className="fill-metal-2 stroke-line" x={bolt} y={40} width={THROW} height={52} />
          <circle className="fill-metal-1 stroke-line" cx={DIAL.x} cy={DIAL.y} r={DIAL.radius} />
          <path className="stroke-ink" strokeWidth={3} d={line(pull.dial, 30)} />
          <path className="stroke-accent" strokeWidth={3} d={line(pull.hand, 8)} />
          <text x={DIAL.x} y={DIAL.y + 30} textAnchor="middle">
            hand
          </text>
          <rect
            data-grip=""
            fill="transparent"
            style={{ cursor: "ns-resize", touchAction: "none" }}
            x={DIAL.x - DIAL.radius}
            y={DIAL.y - DIAL.radius}
            width={2 * DIAL.radius}
            height={2 * DIAL.radius}
            {...grip}
          />
        </svg>
      </div>
      <p className="text-small" aria-hidden="true">
        {text}
      </p>
      <p className="text-fine text-soft">
        Drag the dial down to draw the bolt, up to throw it, or use the arrow keys. The colored line is your hand. If
        you let go, your hand starts again where the dial is.
      </p>
    </section>
  );
}
