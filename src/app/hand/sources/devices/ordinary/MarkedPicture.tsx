import { type PointerEvent, type ReactNode, useRef } from "react";
import { LivePicture } from "../camera/LivePicture";
import { MARK_NAMES, type MarkName, withMark } from "./marks";
import type { OrdinaryView } from "./ordinaryView";
import { MARK_TITLES, placeText } from "./ordinaryWords";

interface MarkProps {
  readonly view: OrdinaryView;
  readonly name: MarkName;
}

/** Id of the sentence that says how keys move a mark; the setup has it beside the picture. */
export const MARKS_BY_KEYS = "marks-by-keys";

/** Large enough for a finger, its middle where the mark is. Written here, since style sheets come with the first screen. */
const FINGER = { width: 44, height: 44, transform: "translate(-50%, -50%)", borderRadius: "50%" } as const;

/** A mark that arrow keys move. */
function Mark({ view, name }: MarkProps) {
  const place = view.marks[name];
  return (
    <div
      className="absolute"
      style={{ ...FINGER, left: `${100 * place.x}%`, top: `${100 * place.y}%` }}
      role="slider"
      tabIndex={0}
      aria-label={MARK_TITLES[name]}
      aria-roledescription="mark on the picture"
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={Math.round(100 * place.x)}
      aria-valuetext={placeText(place)}
      aria-describedby={MARKS_BY_KEYS}
      onKeyDown={(event) => {
        if (view.moveByKey(name, event.key, event.shiftKey)) event.preventDefault();
      }}
    >
      <svg className="block w-full h-full" viewBox="-22 -22 44 44" aria-hidden="true" focusable="false">
        <g className="fill-none" stroke="var(--paper)" strokeWidth={6}>
          {CROSSES[name]}
        </g>
        <g className="fill-none stroke-accent" strokeWidth={2}>
          {CROSSES[name]}
        </g>
      </svg>
    </div>
  );
}

/** Told apart by their shape: a ring with a cross for the knob, an arrow's head for the index. */
const CROSSES: Readonly<Record<MarkName, ReactNode>> = {
  middle: (
    <>
      <circle r={12} />
      <path d="M-18 0H-4M4 0H18M0 -18V-4M0 4V18" />
    </>
  ),
  index: <path d="M-9 -16L0 0L9 -16M-18 0H-5M5 0H18" />,
};

/** The live picture with the two marks: tapped, dragged, or moved by the arrow keys. */
export function MarkedPicture({ view, stream }: { readonly view: OrdinaryView; readonly stream: MediaStream }) {
  const held = useRef<MarkName | null>(null);
  const placeOf = ({ currentTarget, clientX, clientY }: PointerEvent) => {
    const { left, top, width, height } = currentTarget.getBoundingClientRect();
    return [(clientX - left) / width, (clientY - top) / height] as const;
  };
  return (
    <LivePicture stream={stream}>
      <div
        className="absolute inset-0"
        style={{ touchAction: "none", cursor: "crosshair" }}
        data-testid="marks"
        onPointerDown={(event) => {
          held.current = view.tap(...placeOf(event));
          event.currentTarget.setPointerCapture(event.pointerId);
        }}
        onPointerMove={(event) => {
          if (held.current !== null) view.place(withMark(view.marks, held.current, ...placeOf(event)));
        }}
        onPointerUp={() => {
          held.current = null;
        }}
        onPointerCancel={() => {
          held.current = null;
        }}
      >
        {MARK_NAMES.map((name) => (
          <Mark key={name} view={view} name={name} />
        ))}
      </div>
    </LivePicture>
  );
}
