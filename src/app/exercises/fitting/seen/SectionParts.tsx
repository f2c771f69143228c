import type { Assembly } from "../../../../fitting/assembly";
import type { FittingSizes } from "../../../../fitting/fittingSizes";
import { AXIS, type Depths, DRAWN_mm, SCALE, strikeAt, x, y } from "./section";

/** What of a part is drawn as metal, cut metal or cut door; a part that is still in the tray is an empty dashed outline. */
export const IN_TRAY = "fill-none stroke-soft [stroke-dasharray:5_4]";
export const WHOLE = "fill-metal-2 stroke-line";
export const CUT = "fill-metal-3 stroke-line";

interface BlockProps {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  readonly className: string;
  /** A pattern in place of the fill of its class. */
  readonly fill?: string;
}

/** A part cut through: from one depth to another, from one height to another; millimeters. */
export function Block({ from, to, low, high, className, fill }: BlockProps) {
  const size = { x: x(from), y: y(high), width: SCALE * (to - from), height: SCALE * (high - low) };
  return (
    <>
      <rect className={className} {...size} />
      {fill !== undefined && <rect fill={fill} {...size} />}
    </>
  );
}

/** The same part above and below the axis. */
export const Pair = ({ low, high, ...block }: BlockProps) => (
  <>
    <Block {...block} low={low} high={high} />
    <Block {...block} low={-high} high={-low} />
  </>
);

export interface PartsProps {
  readonly assembly: Assembly;
  readonly sizes: FittingSizes;
  readonly at: Depths;
}

export const Door = ({ at }: Pick<PartsProps, "at">) => (
  <Pair
    from={at.door}
    to={at.plate}
    low={DRAWN_mm.door.hole}
    high={DRAWN_mm.door.high}
    className="fill-metal-1 stroke-line"
    fill="url(#section-door)"
  />
);

/** The ring: its base behind the dial, and the lip round the dial's rim; off center by what it is. */
export function Ring({ assembly: { ring }, sizes, at }: PartsProps) {
  const { lip, ringHole } = DRAWN_mm;
  const inner = sizes.markRadius_mm + sizes.rimRoom_mm + lip.from;
  const outer = inner + lip.wide;
  const shift = ring?.offset.y_mm ?? 0;
  const half = (side: 1 | -1) => {
    const up = (height: number) => y(side * height + shift);
    return `M${x(0)} ${up(ringHole)}V${up(inner)}H${x(-lip.deep)}V${up(outer)}H${x(at.door)}V${up(ringHole)}Z`;
  };
  return <path className={ring === null ? IN_TRAY : CUT} d={`${half(1)} ${half(-1)}`} />;
}

export function Washers({ assembly: { washers }, sizes, at }: PartsProps) {
  let from = at.face - DRAWN_mm.cam.thick;
  return washers.map((washer) => {
    const thick = washer === "flat" ? sizes.flat_mm : sizes.springFlat_mm + 0.4;
    from -= thick + 0.2;
    const className = washer === "flat" ? "fill-soft" : "fill-accent";
    return (
      <Pair
        key={from}
        from={from}
        to={from + thick}
        low={DRAWN_mm.spindle}
        high={DRAWN_mm.washer}
        className={className}
      />
    );
  });
}

export function Cover({ assembly: { hasCover }, at }: PartsProps) {
  const { high } = DRAWN_mm.cover;
  return (
    <path
      className={hasCover ? "fill-none stroke-ink" : IN_TRAY}
      strokeWidth={hasCover ? 3 : 1}
      d={`M${x(at.plate)} ${y(high)}H${x(at.cover)}V${y(-high)}H${x(at.plate)}`}
    />
  );
}

/** The bolt and its strike, beside the section. */
export function Strike({ assembly: { strike }, sizes, at }: PartsProps) {
  const middle = strikeAt(at);
  const { wide, high } = DRAWN_mm.strike;
  const height = SCALE * sizes.bolt_mm;
  const hole = SCALE * sizes.hole_mm;
  const center = y(strike?.above_mm ?? 0);
  return (
    <>
      <rect className={WHOLE} x={middle - 44} y={AXIS - height / 2} width={44} height={height} />
      <path
        className={strike === null ? IN_TRAY : CUT}
        fillRule="evenodd"
        d={`M${middle} ${center - SCALE * high}h${SCALE * wide}v${2 * SCALE * high}h${-SCALE * wide}Z M${middle + 4} ${center - hole / 2}h12v${hole}h-12Z`}
      />
    </>
  );
}
