import { memo, useMemo } from "react";
import { camPath, discPath, fenceFaces, fenceMark, flyPath, pinTransform } from "./outlines";
import { CAM_RADIUS, centerAt, planeTransform, type Scene, THICKNESS, turnTransform, WHEEL_RADIUS } from "./packScene";

interface WheelProps {
  readonly scene: Scene;
  /** How many discs behind the cam. */
  readonly depth: number;
  /** Half the width of its gate, and half the angle of its fly. */
  readonly gateWidth: number;
  readonly flyWidth: number;
  /** Degrees, counter-clockwise. */
  readonly gateAngle: number;
  readonly flyAngle: number;
  readonly isDriven: boolean;
}

/** A wheel with its gate and its fly. */
export const Wheel = memo(function Wheel(props: WheelProps) {
  const { scene, depth, gateWidth, flyWidth, gateAngle, isDriven } = props;
  const outline = useMemo(() => discPath(WHEEL_RADIUS, gateWidth), [gateWidth]);
  const fly = useMemo(() => flyPath(flyWidth), [flyWidth]);
  const turned = turnTransform(gateAngle);
  return (
    <g>
      <g transform={planeTransform(scene, depth, THICKNESS)}>
        <path className="fill-metal-3" strokeWidth={1.4} d={outline} transform={turned} />
      </g>
      <g transform={planeTransform(scene, depth)}>
        <path className="fill-metal-1" strokeWidth={1.4} d={outline} transform={turned} />
        <circle className="stroke-line fill-metal-2" strokeWidth={0.7} r={WHEEL_RADIUS - 15} />
        <path className={isDriven ? "fill-accent" : "fill-plate"} d={fly} transform={turnTransform(props.flyAngle)} />
        <circle className="fill-metal-2" r={9} />
      </g>
    </g>
  );
});

interface CamProps {
  readonly scene: Scene;
  readonly angle: number;
  readonly outline?: string;
}

/** The drive cam: the nearest disc, and the smallest. */
export const Cam = memo(function Cam({ scene, angle, outline = camPath }: CamProps) {
  const turned = turnTransform(angle);
  return (
    <g>
      <g transform={planeTransform(scene, 0, THICKNESS)}>
        <path className="fill-metal-3" strokeWidth={1.4} d={outline} transform={turned} />
      </g>
      <g transform={planeTransform(scene, 0)}>
        <path className="fill-metal-2" strokeWidth={1.4} d={outline} transform={turned} />
        <circle className="stroke-line" strokeWidth={0.7} r={CAM_RADIUS - 19} />
      </g>
    </g>
  );
});

interface DrivePinProps {
  readonly scene: Scene;
  /** Depth of the wheel that it reaches. */
  readonly depth: number;
  readonly angle: number;
  readonly isDriving: boolean;
}

/** The pin on the back of a driver that meets the fly of the wheel behind it. */
export const DrivePin = memo(function DrivePin({ scene, depth, angle, isDriving }: DrivePinProps) {
  const tip = centerAt(scene, depth);
  const root = centerAt(scene, depth - 1);
  const line = { x1: tip.x, y1: tip.y, x2: root.x + THICKNESS.x, y2: root.y + THICKNESS.y };
  return (
    <g className={isDriving ? "stroke-accent" : undefined} transform={pinTransform(scene, angle)}>
      <line strokeWidth={isDriving ? 6 : 4.4} {...line} />
      <line className={isDriving ? undefined : "stroke-plate"} strokeWidth={2.6} {...line} />
      <ellipse
        className={isDriving ? "fill-accent stroke-ink" : "fill-plate"}
        strokeWidth={0.9}
        cx={tip.x}
        cy={tip.y}
        rx={2.4}
        ry={3}
      />
    </g>
  );
});

/** The spindle from one depth to a nearer one. */
export const Spindle = memo(function Spindle({ scene, far, near }: { scene: Scene; far: number; near: number }) {
  const from = centerAt(scene, far);
  const to = centerAt(scene, near);
  const line = { x1: from.x, y1: from.y, x2: to.x, y2: to.y };
  return (
    <g>
      <line strokeWidth={9} {...line} />
      <line className="stroke-metal-2" strokeWidth={7} {...line} />
      <line className="stroke-line" strokeWidth={0.7} {...line} y1={from.y - 1.4} y2={to.y - 1.4} />
    </g>
  );
});

/** Where a gate must come to stand: hollow while it is off, filled once it is true. */
export const GateMark = memo(function GateMark({ scene, depth, isTrue }: GateMarkProps) {
  return (
    <path className={isTrue ? "cutaway-falls fill-ink" : "cutaway-falls stroke-line"} d={fenceMark(scene, depth)} />
  );
});

interface GateMarkProps {
  readonly scene: Scene;
  readonly depth: number;
  readonly isTrue: boolean;
}

/** The fence from one depth to a nearer one; it falls with the lever. */
export const FencePart = memo(function FencePart({ scene, far, near }: { scene: Scene; far: number; near: number }) {
  const { top, side } = fenceFaces(scene, far, near);
  return (
    <g className="cutaway-falls">
      <polygon className="fill-metal-3" points={side} />
      <polygon className="fill-metal-1" points={top} />
    </g>
  );
});
