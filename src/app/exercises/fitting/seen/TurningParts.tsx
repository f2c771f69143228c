import { gateDepth, type TurnedParts } from "../../../../fitting/teaching/turnedParts";
import { Block, CUT, IN_TRAY, Pair, type PartsProps, Washers, WHOLE } from "./SectionParts";
import { DRAWN_mm, fromSide, gateDeep_mm, leverUp_mm, x, y } from "./section";

export interface TurningProps extends PartsProps {
  readonly perTurn: number;
  readonly turned: TurnedParts;
  readonly isElectronic: boolean;
}

/** The cam cut through the middle: its gate and its keyways as they come into the cut. */
function Cam({ assembly, sizes, at, perTurn, turned, isElectronic }: TurningProps) {
  const { cam, spindle, key } = DRAWN_mm;
  const from = at.face - cam.thick;
  const isOn = assembly.body !== null;
  const deep = isElectronic ? 0 : gateDeep_mm(sizes);
  const isCut = (round: number) =>
    Array.from({ length: sizes.keyways }, (_, k) => perTurn * (0.5 + k / sizes.keyways) - turned.cam).some((place) => {
      const { up, near } = fromSide(place - round, perTurn);
      return up > 0 && Math.abs(near) * ((spindle + sizes.keyAt_mm) / 2) < key.half;
    });
  return [1, -1].map((side) => {
    const round = side === 1 ? 0 : perTurn / 2;
    const edge = side * (cam.radius - deep * gateDepth(turned.cam - round, perTurn));
    const block = (low: number, high: number) => ({ low: Math.min(low, high), high: Math.max(low, high) });
    return (
      <g key={side}>
        <Block from={from} to={at.face} {...block(side * spindle, edge)} className={isOn ? CUT : IN_TRAY} />
        {isOn && isCut(round) && (
          <Block
            from={at.face - key.in}
            to={at.face}
            {...block(side * spindle, side * sizes.keyAt_mm)}
            className="fill-paper stroke-line"
          />
        )}
      </g>
    );
  });
}

/** The lever behind the cam's face, and its nose on the cam's edge. */
function Lever({ assembly, sizes, at, turned }: TurningProps) {
  const { body, cam, key, leverThick, nose } = DRAWN_mm;
  const className = assembly.body === null ? IN_TRAY : WHOLE;
  const up = leverUp_mm(turned, sizes);
  const from = at.face + key.seated + 0.4;
  return (
    <>
      <Block
        from={from - nose.over}
        to={from}
        low={cam.radius + up}
        high={cam.radius + nose.high + up}
        className={className}
      />
      <Block
        from={from}
        to={from + leverThick}
        low={sizes.leverAt_mm + up}
        high={body - 2 + up}
        className={className}
      />
    </>
  );
}

/** The lock body on its plate, with cam, washers and lever; by one screw it tilts. */
export function Body(props: TurningProps) {
  const { assembly, sizes, at } = props;
  const { plate, body, cam } = DRAWN_mm;
  const isOn = assembly.body !== null;
  return (
    <g transform={assembly.body === "by-one" ? `rotate(1.5 ${x(at.body)} ${y(body)})` : undefined}>
      <Pair from={at.plate} to={at.body} low={plate.hole} high={plate.high} className={isOn ? CUT : IN_TRAY} />
      <Pair from={at.body} to={at.face} low={cam.radius + 2} high={body} className={isOn ? WHOLE : IN_TRAY} />
      <Cam {...props} />
      <Washers assembly={assembly} sizes={sizes} at={at} />
      <Lever {...props} />
    </g>
  );
}

/** Graduations on the edge of the dial, as many as whoever looks from the side sees. */
function EdgeMarks({ sizes, perTurn, turned, back_mm }: Omit<DialProps, "assembly" | "at" | "isElectronic">) {
  const { dialThick } = DRAWN_mm;
  const marks = Array.from({ length: perTurn }, (_, mark) => {
    const { up, near } = fromSide(mark - turned.dial, perTurn);
    const long = mark % 10 === 0 ? dialThick : mark % 5 === 0 ? 0.6 * dialThick : 0.35 * dialThick;
    const line = `M${x(back_mm)} ${y(sizes.markRadius_mm * up).toFixed(2)}H${x(back_mm - long)}`;
    return { mark, near, line };
  }).filter(({ near }) => near > 0);
  const lines = (isShown: (mark: number) => boolean) =>
    marks
      .filter(({ mark }) => isShown(mark))
      .map(({ line }) => line)
      .join("");
  return (
    <>
      <path className="stroke-soft" strokeWidth={0.7} d={lines((mark) => mark !== 0)} />
      <path className="stroke-accent" strokeWidth={3} d={lines((mark) => mark === 0)} />
    </>
  );
}

interface DialProps extends TurningProps {
  /** Depth of the dial's back. */
  readonly back_mm: number;
}

/** The dial and its spindle, as deep as they are, and as they are turned: graduations on the dial's edge, the spindle's slot. */
export function Dial(props: DialProps) {
  const { assembly, sizes, perTurn, turned, back_mm } = props;
  const { spindle, dialIn } = assembly;
  const { dialThick, knob, key, slot, spindle: thin } = DRAWN_mm;
  const out = dialIn === null ? IN_TRAY : null;
  const face = back_mm - dialThick;
  const rim = sizes.markRadius_mm;
  const end = back_mm + spindle.length_mm;
  const { up, near } = fromSide(turned.slot, perTurn);
  const half = key.half * Math.max(0.2, Math.abs(near));
  return (
    <>
      <Block from={back_mm} to={end} low={-thin} high={thin} className={out ?? WHOLE} />
      {out === null && near > -0.1 && (
        <Block
          from={end - slot}
          to={end}
          low={Math.max(-thin, thin * up - half)}
          high={Math.min(thin, thin * up + half)}
          className="fill-ink"
        />
      )}
      <Block from={face} to={back_mm} low={-rim} high={rim} className={out ?? CUT} />
      {out === null && <EdgeMarks {...props} />}
      <Block from={back_mm + knob.from} to={face} low={-knob.radius} high={knob.radius} className={out ?? WHOLE} />
    </>
  );
}

/** The key in cam and spindle, where it has come round to; one that stands proud reaches the lever. */
export function Key({ assembly: { key }, sizes, at, perTurn, turned }: TurningProps) {
  const { in: deep, seated, proud, half } = DRAWN_mm.key;
  const { up, near } = key === null ? { up: 1, near: 0 } : fromSide(turned.slot, perTurn);
  const ends = [DRAWN_mm.spindle * up, sizes.keyAt_mm * up];
  const wide = half * Math.abs(near);
  return (
    <Block
      from={at.face - deep}
      to={at.face + (key === null || key.isSeated ? seated : proud)}
      low={Math.min(...ends) - wide}
      high={Math.max(...ends) + wide}
      className={key === null ? IN_TRAY : "fill-accent"}
    />
  );
}
