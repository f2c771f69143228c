import type { ReactNode, Ref } from "react";
import { WIDTH } from "./packScene";

interface DrawingFrameProps {
  readonly picture: Ref<SVGSVGElement>;
  readonly height: number;
  /** Whether it is seen from the other side. */
  readonly hasLeft: boolean;
  readonly words: ReactNode;
  readonly children: ReactNode;
}

/** The frame of a drawing: its parts, seen from either side, and words that are never mirrored. */
export const DrawingFrame = ({ picture, height, hasLeft, words, children }: DrawingFrameProps) => (
  <svg
    ref={picture}
    className="cutaway-svg block w-full h-auto overflow-visible stroke-ink fill-none"
    strokeWidth={1}
    strokeLinejoin="round"
    viewBox={`0 0 ${WIDTH} ${height}`}
    aria-hidden="true"
  >
    <g transform={hasLeft ? `translate(${WIDTH} 0) scale(-1 1)` : undefined}>{children}</g>
    {words}
  </svg>
);
