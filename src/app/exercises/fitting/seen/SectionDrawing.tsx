import type { Assembly } from "../../../../fitting/assembly";
import { gapOf, type LockToFit } from "../../../../fitting/fittedLock";
import type { FittingSizes } from "../../../../fitting/fittingSizes";
import type { Washer } from "../../../../fitting/washerStack";
import "./fitting.css";

/** Units of the drawing for a millimeter. */
const SCALE = 2.7;
/** Where the outer face of the ring is, and the axis of the spindle. */
const RING_AT = 190;
const AXIS = 140;
/** Sizes that only the drawing has, millimeters. */
const DIAL_THICK_mm = 7;
/** From the rim of the dial to the ring's lip, beyond the room that is between them, and the width of the lip. */
const LIP_mm = { from: 0.7, wide: 6.5 };
const SPINDLE_mm = 3.5;
const BODY_mm = 28;
const CAM_mm = { radius: 13, thick: 8 };
const COVER_mm = 24;
/** How far a dial that lies in the tray is drawn away from the ring. */
const APART_mm = 24;

const x = (depth_mm: number) => RING_AT + SCALE * depth_mm;
const y = (up_mm: number) => AXIS - SCALE * up_mm;

interface BlockProps {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  readonly className: string;
}

/** A part cut through: from one depth to another, from one height to another; millimeters. */
function Block({ from, to, low, high, className }: BlockProps) {
  return (
    <rect className={className} x={x(from)} y={y(high)} width={SCALE * (to - from)} height={SCALE * (high - low)} />
  );
}

/** The same part above and below the axis. */
function Pair({ low, high, ...block }: BlockProps) {
  return (
    <>
      <Block {...block} low={low} high={high} />
      <Block {...block} low={-high} high={-low} />
    </>
  );
}

function Washers({
  washers,
  sizes,
  at,
}: {
  readonly washers: readonly Washer[];
  readonly sizes: FittingSizes;
  readonly at: number;
}) {
  let from = at;
  return washers.map((washer, k) => {
    const thick = washer === "flat" ? sizes.flat_mm : sizes.springFlat_mm + 0.4;
    from -= thick + 0.2;
    const className = washer === "flat" ? "fill-metal-3" : "fill-accent";
    // biome-ignore lint/suspicious/noArrayIndexKey: washers of a kind are alike
    return <Pair key={k} from={from} to={from + thick} low={SPINDLE_mm} high={9} className={className} />;
  });
}

/** Where the strike is drawn, right of the cover. */
const strikeAt = ({ ring_mm, door_mm, plate_mm, body_mm }: FittingSizes) =>
  Math.max(560, x(ring_mm + door_mm + plate_mm + body_mm + COVER_mm) + 60);

function Strike({ assembly, sizes }: { readonly assembly: Assembly; readonly sizes: FittingSizes }) {
  const { strike } = assembly;
  const middle = strikeAt(sizes);
  const height = SCALE * sizes.bolt_mm;
  const hole = SCALE * sizes.hole_mm;
  const above = SCALE * (strike?.above_mm ?? 0);
  return (
    <g>
      <rect className="fill-metal-2 stroke-line" x={middle - 44} y={AXIS - height / 2} width={44} height={height} />
      {strike !== null && (
        <path
          className="fill-metal-3 stroke-line"
          fillRule="evenodd"
          d={`M${middle} ${AXIS - above - 46}h20v92h-20Z M${middle + 4} ${AXIS - above - hole / 2}h12v${hole}h-12Z`}
        />
      )}
      <text x={middle - 12} y={290} textAnchor="middle">
        bolt, strike
      </text>
    </g>
  );
}

interface SectionDrawingProps {
  readonly assembly: Assembly;
  readonly lock: LockToFit;
}

/** The section through the door, to scale: what is put on, how deep the dial is, where the spindle ends; and the bolt beside it. */
export function SectionDrawing({ assembly, lock }: SectionDrawingProps) {
  const { ring, spindle, dialIn, body, key, washers, hasCover } = assembly;
  const { sizes } = lock;
  const doorFrom = sizes.ring_mm;
  const plateFrom = doorFrom + sizes.door_mm;
  const bodyFrom = plateFrom + sizes.plate_mm;
  const face = bodyFrom + sizes.body_mm;
  const back = dialIn === null ? -APART_mm : -gapOf(lock, spindle.length_mm, dialIn);
  const shift = ring?.offset.y_mm ?? 0;
  const inner_mm = sizes.markRadius_mm + sizes.rimRoom_mm + LIP_mm.from;
  const outer_mm = inner_mm + LIP_mm.wide;
  return (
    <figure className="fitting-section w-full max-w-[760px]">
      <svg viewBox={`0 0 ${strikeAt(sizes) + 80} 300`} aria-hidden="true">
        <Pair from={doorFrom} to={plateFrom} low={7} high={46} className="fill-metal-1 stroke-line" />
        {ring !== null && (
          <>
            <Block
              from={0}
              to={doorFrom}
              low={inner_mm + shift}
              high={outer_mm + shift}
              className="fill-metal-3 stroke-line"
            />
            <Block
              from={0}
              to={doorFrom}
              low={-outer_mm + shift}
              high={-inner_mm + shift}
              className="fill-metal-3 stroke-line"
            />
          </>
        )}
        {body !== null && (
          <g transform={body === "by-one" ? `rotate(1.5 ${x(bodyFrom)} ${y(BODY_mm)})` : undefined}>
            <Pair from={plateFrom} to={bodyFrom} low={6} high={32} className="fill-metal-3 stroke-line" />
            <Pair
              from={bodyFrom}
              to={face}
              low={CAM_mm.radius + 2}
              high={BODY_mm}
              className="fill-metal-2 stroke-line"
            />
            <Pair
              from={face - CAM_mm.thick}
              to={face}
              low={SPINDLE_mm}
              high={CAM_mm.radius}
              className="fill-metal-3 stroke-line"
            />
            <Washers washers={washers} sizes={sizes} at={face - CAM_mm.thick} />
          </g>
        )}
        <Block
          from={back}
          to={back + spindle.length_mm}
          low={-SPINDLE_mm}
          high={SPINDLE_mm}
          className="fill-metal-2 stroke-line"
        />
        <Block
          from={back - DIAL_THICK_mm}
          to={back}
          low={-sizes.markRadius_mm}
          high={sizes.markRadius_mm}
          className="fill-metal-3 stroke-line"
        />
        <Block from={back - 22} to={back - DIAL_THICK_mm} low={-14} high={14} className="fill-metal-2 stroke-line" />
        {key !== null && (
          <Block
            from={face - 5}
            to={face + (key.isSeated ? 0.6 : 3)}
            low={SPINDLE_mm}
            high={6.5}
            className="fill-accent"
          />
        )}
        {hasCover && (
          <path
            className="fill-none stroke-ink"
            strokeWidth={3}
            d={`M${x(plateFrom)} ${y(36)}H${x(face + COVER_mm)}V${y(-36)}H${x(plateFrom)}`}
          />
        )}
        <Strike assembly={assembly} sizes={sizes} />
        <text x={x(back - 12)} y={20} textAnchor="middle">
          dial
        </text>
        <text x={x(6)} y={290} textAnchor="middle">
          ring
        </text>
        <text x={x(34)} y={290} textAnchor="middle">
          door
        </text>
        <text x={x(74)} y={290} textAnchor="middle">
          body, cam
        </text>
      </svg>
    </figure>
  );
}
