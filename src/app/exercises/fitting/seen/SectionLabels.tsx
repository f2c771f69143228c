import type { Assembly } from "../../../../fitting/assembly";
import type { FittingSizes } from "../../../../fitting/fittingSizes";
import { type Depths, DRAWN_mm, HEIGHT, SCALE, strikeAt, x, y } from "./section";

interface LabelProps {
  readonly of: string;
  /** Where its name is written. */
  readonly x: number;
  readonly y: number;
  /** A point of the part, from which a line leads to the name. */
  readonly from: readonly [x: number, y: number];
}

const TOP = 20;
const BOTTOM = HEIGHT - 10;
/** Between a name and the end of its line. */
const LETTERS = 15;

function Label({ of, x: nameX, y: nameY, from: [fromX, fromY] }: LabelProps) {
  const end = nameY < fromY ? nameY + 5 : nameY - LETTERS;
  return (
    <>
      <path className="stroke-soft fill-none" d={`M${fromX} ${fromY}L${nameX} ${end}`} />
      <circle className="fill-ink" cx={fromX} cy={fromY} r={2} />
      <text x={nameX} y={nameY} textAnchor="middle">
        {of}
      </text>
    </>
  );
}

interface SectionLabelsProps {
  readonly assembly: Assembly;
  readonly sizes: FittingSizes;
  readonly at: Depths;
  readonly back_mm: number;
  /** How high the key is, as a part of how far it is from the axis. */
  readonly keyUp: number;
}

/** The name of each part, with a line to it; what the picture is as large as. */
export function SectionLabels({ assembly, sizes, at, back_mm, keyUp }: SectionLabelsProps) {
  const { cam, body, cover, lip, dialThick } = DRAWN_mm;
  const rim = sizes.markRadius_mm;
  const door = (at.door + at.plate) / 2;
  const right = x(at.cover) + 28;
  const strike = strikeAt(at);
  const bar = SCALE * 20;
  return (
    <>
      <Label of="dial" x={x(back_mm - 14)} y={TOP} from={[x(back_mm - dialThick / 2), y(rim - 4)]} />
      <Label of="ring" x={x(6)} y={TOP} from={[x(6), y(rim + lip.from + lip.wide - 2)]} />
      <Label of="door" x={x(door)} y={TOP} from={[x(door), y(40)]} />
      <Label of="lock body" x={x(at.body + 12)} y={TOP} from={[x(at.body + 12), y(body - 5)]} />
      <Label of="cover" x={x(at.cover)} y={TOP} from={[x(at.cover - 6), y(cover.high)]} />
      <Label of="lever" x={right} y={y(27)} from={[x(at.face + 2.5), y(body - 7)]} />
      <Label of="key" x={right} y={y(17)} from={[x(at.face - 1), y(6.5 * keyUp)]} />
      <Label of="spindle" x={x(door)} y={BOTTOM} from={[x(door), y(0)]} />
      <Label of="cam" x={x(at.face + 12)} y={BOTTOM} from={[x(at.face - cam.thick / 2), y(-9)]} />
      {assembly.washers.length > 0 && (
        <Label of="washers" x={x(at.face - 17)} y={BOTTOM} from={[x(at.face - cam.thick - 1), y(-7)]} />
      )}
      <Label of="bolt" x={strike - 24} y={TOP} from={[strike - 22, y(3)]} />
      <Label of="strike" x={strike + 26} y={TOP} from={[strike + 10, y(14)]} />
      <path className="stroke-soft fill-none" d={`M16 ${BOTTOM - 10}v8h${bar}v-8`} />
      <text x={24 + bar} y={BOTTOM}>
        20 mm
      </text>
    </>
  );
}
