import { gateDepth } from "../../../../fitting/teaching/turnedParts";
import { IN_TRAY, WHOLE } from "./SectionParts";
import { DRAWN_mm, gateDeep_mm, HEIGHT, leverUp_mm, SCALE, strikeAt } from "./section";
import type { TurningProps } from "./TurningParts";

/** Corners of the cam's outline. */
const CORNERS = 120;
const MIDDLE = 280;
/** Half of what is drawn of the lever's length, its height, and half of the nose's width, millimeters. */
const LEVER = { half: 16, high: 10, nose: 1.2 };

/** The cam's outline about its middle, gate at the top. */
function outline(deep: number, perTurn: number): string {
  const points = Array.from({ length: CORNERS }, (_, k) => {
    const angle = (2 * Math.PI * k) / CORNERS;
    const radius = SCALE * (DRAWN_mm.cam.radius - deep * gateDepth((k / CORNERS) * perTurn, perTurn));
    return `${(radius * Math.sin(angle)).toFixed(2)} ${(-radius * Math.cos(angle)).toFixed(2)}`;
  });
  return `M${points.join("L")}Z`;
}

interface SpokeProps {
  /** Millimeters from the axis. */
  readonly from: number;
  readonly to: number;
  readonly half: number;
  /** Degrees, clockwise from the top. */
  readonly angle: number;
  readonly className: string;
}

/** Something straight that leads away from the axis. */
const Spoke = ({ from, to, half, angle, className }: SpokeProps) => (
  <rect
    className={className}
    x={-SCALE * half}
    y={-SCALE * to}
    width={2 * SCALE * half}
    height={SCALE * (to - from)}
    transform={`rotate(${angle.toFixed(2)})`}
  />
);

/** The cam as one sees it from inside with the cover off: gate, keyways, the spindle's end with its slot, key and lever. */
export function CamFromInside({ assembly, sizes, at, perTurn, turned, isElectronic }: TurningProps) {
  const { spindle, cam, key, nose } = DRAWN_mm;
  const isOn = assembly.body !== null;
  const deep = isElectronic ? 0 : gateDeep_mm(sizes);
  const degrees = (leftTurned: number) => (360 * leftTurned) / perTurn;
  const up = SCALE * leverUp_mm(turned, sizes);
  return (
    <g transform={`translate(${strikeAt(at) - 10} ${MIDDLE})`}>
      <g transform={`rotate(${degrees(turned.cam).toFixed(2)})`}>
        <path className={isOn ? "fill-metal-3 stroke-line" : IN_TRAY} d={outline(deep, perTurn)} />
        {isElectronic && (
          <Spoke from={cam.radius - 3} to={cam.radius} half={0.3} angle={0} className={isOn ? "fill-ink" : IN_TRAY} />
        )}
        {Array.from({ length: sizes.keyways }, (_, k) => k).map((k) => (
          <Spoke
            key={k}
            from={spindle}
            to={sizes.keyAt_mm}
            half={key.half}
            angle={180 - (360 * k) / sizes.keyways}
            className={isOn ? "fill-paper stroke-line" : IN_TRAY}
          />
        ))}
      </g>
      {assembly.dialIn !== null && (
        <>
          <circle className={WHOLE} r={SCALE * spindle} />
          <Spoke from={1} to={spindle} half={key.half} angle={-degrees(turned.slot)} className="fill-ink" />
        </>
      )}
      {assembly.key !== null && (
        <Spoke
          from={spindle - 1.5}
          to={sizes.keyAt_mm}
          half={key.half}
          angle={-degrees(turned.slot)}
          className="fill-accent"
        />
      )}
      <rect
        className={isOn ? "fill-ink" : IN_TRAY}
        x={-SCALE * LEVER.nose}
        y={-SCALE * (cam.radius + nose.high) - up}
        width={2 * SCALE * LEVER.nose}
        height={SCALE * nose.high}
      />
      <rect
        className={isOn ? "fill-metal-2 stroke-line" : IN_TRAY}
        fillOpacity={0.6}
        x={-SCALE * LEVER.half}
        y={-SCALE * (sizes.leverAt_mm + LEVER.high) - up}
        width={2 * SCALE * LEVER.half}
        height={SCALE * LEVER.high}
      />
      <text x={0} y={HEIGHT - 6 - MIDDLE} textAnchor="middle">
        from inside
      </text>
    </g>
  );
}
