import { scaleLinear } from "d3-scale";
import type { Assembly } from "../../../fitting/assembly";
import type { LockToFit } from "../../../fitting/fittedLock";
import { faceOf, readingError } from "../../../fitting/offCenter";
import { signedText } from "../../parts/signedText";

const WIDTH = 480;
const HEIGHT = 170;
const EDGE = { left: 44, right: 12, top: 14, bottom: 26 };
const STEPS = 100;

/** What marks all round the ring read too much: a level line for what zero takes, and a wave for what it cannot. */
export function RingPlot({ assembly: { ring }, lock }: { readonly assembly: Assembly; readonly lock: LockToFit }) {
  const { perTurn, sizes, changingIndex } = lock;
  const face = faceOf(perTurn, sizes.markRadius_mm, ring?.offset ?? null);
  const errorAt = (place: number) => readingError(face, place, 0) - (ring?.turned ?? 0);
  const places = Array.from({ length: STEPS + 1 }, (_, k) => (k / STEPS) * perTurn);
  const errors = places.map(errorAt);
  const most = Math.max(0.2, ...errors.map(Math.abs)) * 1.15;
  const x = scaleLinear([0, perTurn], [EDGE.left, WIDTH - EDGE.right]);
  const y = scaleLinear([-most, most], [HEIGHT - EDGE.bottom, EDGE.top]);
  const line = places
    .map((place, k) => `${k === 0 ? "M" : "L"}${x(place).toFixed(1)} ${y(errors[k] ?? 0).toFixed(1)}`)
    .join("");
  const indexes = [
    { label: "opening index", place: 0 },
    ...(changingIndex === null ? [] : [{ label: "changing index", place: (perTurn - changingIndex) % perTurn }]),
  ];
  return (
    <figure className="fitting-section">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label="What marks round the ring read too much">
        {y.ticks(5).map((tick) => (
          <g key={tick}>
            <path className="stroke-hair" d={`M${EDGE.left} ${y(tick)}H${WIDTH - EDGE.right}`} />
            <text x={EDGE.left - 6} y={y(tick) + 4} textAnchor="end">
              {tick}
            </text>
          </g>
        ))}
        <path className="stroke-accent fill-none" strokeWidth={2} d={line} />
        {indexes.map(({ label, place }) => (
          <circle key={label} className="fill-ink" cx={x(place)} cy={y(errorAt(place))} r={4} />
        ))}
        <text x={EDGE.left} y={HEIGHT - 6}>
          top of the ring
        </text>
        <text x={(EDGE.left + WIDTH - EDGE.right) / 2} y={HEIGHT - 6} textAnchor="middle">
          bottom
        </text>
      </svg>
      <figcaption className="text-small text-soft">
        Graduations that each mark of the ring reads too much, clockwise from the top. Dots:{" "}
        {indexes.map(({ label, place }) => `${label} ${signedText(errorAt(place), 2)}`).join(", ")}.
      </figcaption>
    </figure>
  );
}
