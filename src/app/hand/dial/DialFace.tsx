import { memo } from "react";
import type { Turn } from "../../../lock/dial";
import { faceMarks, type Mark } from "./dialGeometry";

const LENGTH: Readonly<Record<Mark["kind"], number>> = { one: 11, five: 18, ten: 27 };
const RIM = 221;
const NUMBERS = 176;

/** The engraved face of a dial in its own frame. It never changes while the dial turns. */
export const DialFace = memo(function DialFace(props: {
  readonly graduations: number;
  readonly numbersIncrease: Turn;
}) {
  const marks = faceMarks(props.graduations, props.numbersIncrease);
  return (
    <>
      {marks.map(({ angle, kind, label }) => (
        <g key={angle} transform={`rotate(${angle})`}>
          <line className={`dial-mark ${kind}`} y1={-RIM} y2={-RIM + LENGTH[kind]} />
          {label !== null && (
            <text className="dial-number" y={-NUMBERS}>
              {label}
            </text>
          )}
        </g>
      ))}
    </>
  );
});
