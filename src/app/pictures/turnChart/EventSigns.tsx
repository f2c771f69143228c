import { type KeyboardEvent, useRef, useState } from "react";
import type { ChartEvent } from "./chartEvents";
import type { ChartFrame } from "./chartFrame";
import { eventLabel, eventName, type Lock } from "./chartWords";
import { type PlacedLabel, placeLabels } from "./placeLabels";
import { TURN_LOOK } from "./turnLook";
import { acrossOf, chartReading } from "./turnPath";

interface Props {
  readonly events: readonly ChartEvent[];
  readonly frame: ChartFrame;
  readonly lock: Lock;
  readonly hasFigures: boolean;
  readonly onFocus: (id: string | null) => void;
  /** Asked for with Enter. */
  readonly onChoose: (event: ChartEvent) => void;
}

const placeOf = ({ position, turn, turns }: ChartEvent, { face, xOf, yOf }: ChartFrame) => ({
  x: xOf(chartReading(position, turn, face)),
  y: yOf(turns),
});

/** A label and where it stands. */
interface WordedLabel extends PlacedLabel {
  readonly text: string;
}

/** Labels of the events that have one, by id. */
function labelsOf(
  events: readonly ChartEvent[],
  frame: ChartFrame,
  hasFigures: boolean,
): ReadonlyMap<string, WordedLabel> {
  const worded = events.map((event) => ({ event, text: eventLabel(event, hasFigures) }));
  const labeled = worded.filter(({ text }) => text !== "");
  const wishes = labeled.map(({ event, text }) => ({
    ...placeOf(event, frame),
    ahead: acrossOf(event.turn, frame.face),
    text,
    isPassedBy: event.faults.some(({ code }) => code === "extra-turnback"),
  }));
  const marks = events.map((event) => {
    const { x, y } = placeOf(event, frame);
    return { left: x - 4, right: x + 4, top: y - 4, bottom: y + (event.faults.length > 0 ? 11 : 4) };
  });
  const bounds = { left: frame.left + 2, right: frame.right - 2, top: frame.top, bottom: frame.bottom };
  const placed = placeLabels(wishes, bounds, marks);
  return new Map(
    labeled.flatMap(({ event, text }, index) => {
      const place = placed[index];
      return place === undefined ? [] : [[event.id, { ...place, text }] as const];
    }),
  );
}

/** Which event a key leads to, or undefined where it leads nowhere. */
function indexFor(key: string, index: number, count: number): number | undefined {
  const targets: Readonly<Record<string, number>> = {
    ArrowRight: index + 1,
    ArrowDown: index + 1,
    ArrowLeft: index - 1,
    ArrowUp: index - 1,
    Home: 0,
    End: count - 1,
  };
  const target = targets[key];
  return target === undefined ? undefined : Math.min(count - 1, Math.max(0, target));
}

/** Arrivals, stops and faults: signs on the path, and one tab stop with arrow keys between them. */
export function EventSigns({ events, frame, lock, hasFigures, onFocus, onChoose }: Props) {
  const [activeId, setActiveId] = useState<string | null>(null);
  const list = useRef<SVGGElement>(null);
  if (events.length === 0) return null;
  const labels = labelsOf(events, frame, hasFigures);
  const found = events.findIndex(({ id }) => id === activeId);
  const active = Math.max(0, found);

  const onKeyDown = (key: KeyboardEvent) => {
    const event = events[active];
    if (key.key === "Enter" && event !== undefined) onChoose(event);
    const next = indexFor(key.key, active, events.length);
    if (next === undefined) return;
    key.preventDefault();
    const option = list.current?.children[next];
    if (option instanceof SVGElement) option.focus();
  };

  return (
    <g ref={list} role="listbox" aria-label="Arrivals, stops and faults" onKeyDown={onKeyDown}>
      {events.map((event, index) => (
        <g
          key={event.id}
          role="option"
          aria-label={eventName(event, lock, hasFigures)}
          aria-selected={index === active}
          tabIndex={index === active ? 0 : -1}
          className={`group ${TURN_LOOK[event.turn].className}`}
          onFocus={() => {
            setActiveId(event.id);
            onFocus(event.id);
          }}
          onBlur={() => onFocus(null)}
        >
          <EventSign event={event} frame={frame} label={labels.get(event.id)} />
        </g>
      ))}
    </g>
  );
}

interface SignProps {
  readonly event: ChartEvent;
  readonly frame: ChartFrame;
  readonly label: WordedLabel | undefined;
}

function EventSign({ event, frame, label }: SignProps) {
  const { x, y } = placeOf(event, frame);
  const isFault = event.faults.length > 0;
  return (
    <>
      {isFault && <title>{event.faults.map(({ message }) => message).join("\n")}</title>}
      <circle
        className="fill-transparent stroke-none group-focus-visible:stroke-accent group-focus-visible:stroke-2"
        cx={x}
        cy={y}
        r={7.5}
      />
      {event.kind === "arrival" && (
        <circle className="turn-chart-arrival fill-plate stroke-current" strokeWidth={1.25} cx={x} cy={y} r={2.8} />
      )}
      {event.isArrival && event.kind === "stop" && (
        <circle className="turn-chart-arrival fill-plate stroke-current" strokeWidth={1.25} cx={x} cy={y} r={6} />
      )}
      {event.kind === "stop" && <circle className="turn-chart-stop fill-current" cx={x} cy={y} r={3.4} />}
      {event.kind === "open" && <path className="stroke-current" strokeWidth={3} d={`M${x},${y - 6}v12`} />}
      {isFault && (
        <path className="turn-chart-fault fill-ink stroke-plate" strokeWidth={1} d={`M${x},${y + 5}l4,6h-8z`} />
      )}
      {label && (
        <text
          x={label.x}
          y={label.y}
          dy="0.35em"
          textAnchor={label.anchor}
          className={
            isFault
              ? "turn-chart-label fill-ink stroke-plate pointer-events-none font-semibold"
              : "turn-chart-label fill-ink stroke-plate pointer-events-none"
          }
        >
          {label.text}
        </text>
      )}
    </>
  );
}
