import type { SVGProps } from "react";
import type { Assembly } from "../../../../fitting/assembly";
import { gapOf, type LockToFit } from "../../../../fitting/fittedLock";
import { turnedParts } from "../../../../fitting/teaching/turnedParts";
import type { Graduations } from "../../../../lock/dial";
import { CamFromInside } from "./CamFromInside";
import { SectionLabels } from "./SectionLabels";
import { Cover, Door, Ring, Strike } from "./SectionParts";
import { DRAWN_mm, depthsOf, fromSide, HEIGHT, SCALE, strikeAt, x, y } from "./section";
import { Body, Dial, Key } from "./TurningParts";
import "./fitting.css";

interface SectionDrawingProps {
  readonly assembly: Assembly;
  readonly lock: LockToFit;
  /** How far dial and cam have been turned together since the key went in, graduations; not at all where left out. */
  readonly turned?: Graduations;
  /** What takes the dial in hand; nothing does where left out. */
  readonly grip?: SVGProps<SVGRectElement>;
}

/**
 * The section through the door, to scale: what is put on, how deep the dial is, where the spindle ends, and what of it turns;
 * the bolt beside it, and the cam as one sees it from inside.
 */
export function SectionDrawing({ assembly, lock, turned = 0, grip }: SectionDrawingProps) {
  const { spindle, dialIn } = assembly;
  const { sizes, perTurn, isElectronic } = lock;
  const at = depthsOf(sizes);
  const back_mm = dialIn === null ? -DRAWN_mm.apart : -gapOf(lock, spindle.length_mm, dialIn);
  const parts = { assembly, sizes, at };
  const turning = { ...parts, perTurn, isElectronic, turned: turnedParts(assembly, lock, turned) };
  const keyUp = assembly.key === null ? 1 : fromSide(turning.turned.slot, perTurn).up;
  return (
    <svg viewBox={`0 0 ${strikeAt(at) + 68} ${HEIGHT}`} aria-hidden="true">
      <defs>
        <pattern id="section-door" width={9} height={9} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="stroke-line" strokeWidth={0.8} d="M0 0V9" />
        </pattern>
      </defs>
      <Door at={at} />
      <Ring {...parts} />
      <Body {...turning} />
      <Dial {...turning} back_mm={back_mm} />
      <Key {...turning} />
      <Cover {...parts} />
      <Strike {...parts} />
      <CamFromInside {...turning} />
      <SectionLabels {...parts} back_mm={back_mm} keyUp={keyUp} />
      {grip && (
        <rect
          data-grip=""
          fill="transparent"
          style={{ cursor: "ns-resize", touchAction: "none" }}
          x={x(back_mm + DRAWN_mm.knob.from)}
          y={y(sizes.markRadius_mm)}
          width={-SCALE * DRAWN_mm.knob.from}
          height={2 * SCALE * sizes.markRadius_mm}
          {...grip}
        />
      )}
    </svg>
  );
}
