import { RULE_STEP_mm, type RuleReading } from "../../../../fitting/instruments/markRule";

/** Units of the drawing for a millimeter. */
const SCALE = 26;
/** What is drawn of the rule to each side of a mark, millimeters. */
const AROUND = 4;
const PIECE = 2 * AROUND * SCALE;
const GAP = 28;
const WIDE = 2 * PIECE + GAP;
/** Where the rule's edge is. */
const EDGE = 34;
const HIGH = 84;

/** The rule about one mark of the ring. @param mark_mm - where on the rule the mark is @param from - left edge in the drawing */
function Piece({ mark_mm, from }: { readonly mark_mm: number; readonly from: number }) {
  const lines = Array.from({ length: (2 * AROUND) / RULE_STEP_mm + 1 }, (_, k) => mark_mm - AROUND + k * RULE_STEP_mm);
  const x = (mm: number) => from + SCALE * (mm - mark_mm + AROUND);
  return (
    <g>
      <rect className="fill-metal-1 stroke-line" x={from} y={EDGE} width={PIECE} height={HIGH - EDGE - 1} />
      <path className="fill-accent" d={`M${x(mark_mm)} ${EDGE - 2}l-6 -16h12z`} />
      {lines.map((mm) => (
        <path
          key={mm}
          className="stroke-ink"
          strokeWidth={1.2}
          d={`M${x(mm)} ${EDGE}v${mm % 5 === 0 ? 22 : mm % 1 === 0 ? 15 : 9}`}
        />
      ))}
      {lines
        .filter((mm) => mm % 5 === 0)
        .map((mm) => (
          <text key={mm} x={x(mm)} y={EDGE + 38} textAnchor="middle">
            {mm}
          </text>
        ))}
    </g>
  );
}

/** A rule across two opposite marks of the ring, both ends drawn large: what an eye reads off it. */
export const MarkRule = ({ from_mm, to_mm }: RuleReading) => (
  <svg
    viewBox={`0 0 ${WIDE} ${HIGH}`}
    role="img"
    aria-label={`Rule across the ring. One mark is at ${from_mm} mm of the rule, the opposite mark at ${to_mm} mm.`}
    className="fitting-section w-full max-w-[480px]"
  >
    <Piece mark_mm={from_mm} from={0} />
    <Piece mark_mm={to_mm} from={PIECE + GAP} />
  </svg>
);
