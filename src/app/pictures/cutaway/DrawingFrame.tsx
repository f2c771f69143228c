import type { ReactNode, Ref } from "react";
import { type Point, WIDTH } from "./packScene";

/** Words beside a part. */
export interface DrawnWords {
  /** Where they begin, or end, before the drawing is mirrored. */
  readonly at: Point;
  readonly anchor?: "start" | "end";
  readonly text: string;
}

interface DrawingFrameProps {
  readonly picture: Ref<SVGSVGElement>;
  readonly height: number;
  /** Whether it is seen from the other side. */
  readonly hasLeft: boolean;
  readonly words: readonly DrawnWords[];
  /** On which side the dial lies. */
  readonly dial: Point;
  readonly children: ReactNode;
}

/** The frame of a drawing: its parts, seen from either side, and words that are never mirrored. */
export function DrawingFrame({ picture, height, hasLeft, words, dial, children }: DrawingFrameProps) {
  const all: readonly DrawnWords[] = [...words, { at: dial, text: hasLeft ? "dial →" : "← dial" }];
  return (
    <svg
      ref={picture}
      className="cutaway-svg block w-full h-auto overflow-visible stroke-ink fill-none"
      strokeWidth={1}
      strokeLinejoin="round"
      viewBox={`0 0 ${WIDTH} ${height}`}
      aria-hidden="true"
    >
      <g transform={hasLeft ? `translate(${WIDTH} 0) scale(-1 1)` : undefined}>{children}</g>
      <g className="cutaway-words fill-soft stroke-none">
        {all.map(({ at: { x, y }, anchor = "start", text }) => (
          <text
            key={`${x} ${y}`}
            x={hasLeft ? WIDTH - x : x}
            y={y}
            textAnchor={hasLeft === (anchor === "end") ? "start" : "end"}
          >
            {text}
          </text>
        ))}
      </g>
    </svg>
  );
}
