import { type PointerEvent, useRef } from "react";
import { OWN_GRIP } from "../../../hand/sources/pointer";
import type { ZeroingSession } from "../session/zeroingSession";

/** Radius of the ring in the drawing of the dial. */
const RADIUS = 240;

/** Direction from the middle of the drawing to a pointer, degrees, clockwise. */
function bearing(event: PointerEvent<SVGElement>): number | null {
  const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect();
  if (box === undefined) return null;
  const [x, y] = [event.clientX - box.left - box.width / 2, event.clientY - box.top - box.height / 2];
  return (Math.atan2(x, -y) * 180) / Math.PI;
}

/** The loose ring under a pointer or a finger: dragged along, it turns. The dial under it stays. */
export function RingGrip({ session }: { readonly session: ZeroingSession }) {
  const last = useRef<number | null>(null);
  const { lock, setup } = session;
  const degrees = (-lock.indexError * 360) / setup.graduations;
  const hold = (event: PointerEvent<SVGElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    last.current = bearing(event);
  };
  const move = (event: PointerEvent<SVGElement>) => {
    const now = bearing(event);
    if (last.current === null || now === null) return;
    session.turnRing((-(now - last.current) * setup.graduations) / 360);
    last.current = now;
  };
  const letGo = () => {
    last.current = null;
  };
  return (
    <g className="ring-grip" {...{ [OWN_GRIP]: true }} transform={`rotate(${degrees})`}>
      <path
        className="fill-none stroke-line opacity-[0.4]"
        strokeWidth={14}
        strokeDasharray="3 9"
        d={`M ${-RADIUS} 0 A ${RADIUS} ${RADIUS} 0 0 0 ${RADIUS} 0`}
      />
      <circle
        className="fill-none stroke-transparent cursor-grab active:cursor-grabbing touch-none"
        strokeWidth={34}
        data-testid="ring-grip"
        r={RADIUS}
        onPointerDown={hold}
        onPointerMove={move}
        onPointerUp={letGo}
        onPointerCancel={letGo}
        onLostPointerCapture={letGo}
      />
    </g>
  );
}
