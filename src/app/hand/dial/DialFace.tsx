import { memo } from "react";
import type { Turn } from "../../../lock/dial";
import { faceMarks, type Mark, pointAt } from "./dialGeometry";

const LENGTH: Readonly<Record<Mark["kind"], number>> = { one: 11, five: 18, ten: 27 };
const WEIGHT: Readonly<Record<Mark["kind"], number>> = { one: 1, five: 1.4, ten: 2.2 };
const KINDS = ["one", "five", "ten"] as const;
const RIM = 221;
const NUMBERS = 176;

/** Marks as one path: a face is drawn three times over, and anew with every move. */
const pathOf = (marks: readonly Mark[]) =>
  marks.map(({ angle, kind }) => `M${pointAt(RIM, angle)}L${pointAt(RIM - LENGTH[kind], angle)}`).join("");

/** The face of a dial in its own frame. It never changes while the dial turns. */
export const DialFace = memo(function DialFace(props: {
  readonly graduations: number;
  readonly numbersIncrease: Turn;
}) {
  const marks = faceMarks(props.graduations, props.numbersIncrease);
  return (
    <>
      {KINDS.map((kind) => (
        <path
          key={kind}
          className="fill-none stroke-(--cut)"
          strokeWidth={WEIGHT[kind]}
          d={pathOf(marks.filter((mark) => mark.kind === kind))}
        />
      ))}
      {marks.map(
        ({ angle, label }) =>
          label !== null && (
            <text key={angle} className="dial-number" y={-NUMBERS} transform={`rotate(${angle})`}>
              {label}
            </text>
          ),
      )}
    </>
  );
});
