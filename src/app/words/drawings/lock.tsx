import { ArcArrow, at, DialDisc, Drawing, GatedWheel, Label, Mark, Ticks } from "./parts";

/** A dial with its numbers. */
export function Dial() {
  return (
    <Drawing>
      <DialDisc r={34} />
      <Label x={60} y={23}>
        0
      </Label>
      <Label x={83} y={49}>
        25
      </Label>
      <Label x={60} y={74}>
        50
      </Label>
      <Label x={37} y={49}>
        75
      </Label>
    </Drawing>
  );
}

/** The step from one line to the next. */
export function Graduation() {
  return (
    <Drawing>
      <path className="stroke-line" strokeWidth={1.2} d="M16 64V40M38 64V40M60 64V30M82 64V40M104 64V40" />
      <path d="M8 64H112" />
      <path className="stroke-accent" strokeWidth={2.4} d="M61 74H81M65 70L61 74L65 78M77 70L81 74L77 78" />
    </Drawing>
  );
}

/** A dial ring with both marks. */
export function Indexes() {
  return (
    <Drawing>
      <circle className="fill-well" cx={60} cy={47} r={40} />
      <DialDisc cy={47} r={30} />
      <Mark cy={47} r={31} degrees={0} />
      <Mark cy={47} r={31} degrees={-45} className="stroke-accent stroke-[2.4]" />
    </Drawing>
  );
}

/** Dial, door, spindle, wheels and cam from the side. */
export function Spindle() {
  return (
    <Drawing>
      <path className="fill-ink" d="M12 22H22V68H12Z" />
      <path className="stroke-line" strokeWidth={1.2} d="M34 8V82M52 8V82" />
      <path className="stroke-3" d="M22 45H104" />
      <path d="M66 20V70M78 20V70M90 20V70" />
      <path className="stroke-accent" strokeWidth={2.4} d="M102 26V64" />
    </Drawing>
  );
}

/** The drive cam with its notch. */
export function DriveCam() {
  return (
    <Drawing>
      <GatedWheel r={34} gate={25} />
      <path className="stroke-3" d="M60 45V20" />
      <circle className="fill-ink" cx={60} cy={45} r={6} />
      <ArcArrow r={41} from={60} to={120} />
    </Drawing>
  );
}

/** One wheel with its gate. */
export function Wheel() {
  return (
    <Drawing>
      <GatedWheel r={36} gate={40} />
      <path className="stroke-accent" strokeWidth={2.4} d="M100 12L87 21M94 12L87 21L88 13" />
    </Drawing>
  );
}

/** Wheels in a row, each with the pin that drives the next. */
export function WheelPack() {
  return (
    <Drawing>
      <path className="stroke-3" d="M8 45H112" />
      <path className="fill-well" d="M22 14H32V76H22ZM50 14H60V76H50ZM78 14H88V76H78Z" />
      <path className="stroke-accent" strokeWidth={2.4} d="M34 28H48M62 28H76M90 28H104" />
      <Label x={27} y={88}>
        1
      </Label>
      <Label x={55} y={88}>
        2
      </Label>
      <Label x={83} y={88}>
        3
      </Label>
    </Drawing>
  );
}

/** A fly: a small piece that a pin pushes a little before the wheel follows. */
export function Fly() {
  const end = at(60, 45, 30, 35);
  return (
    <Drawing>
      <circle className="fill-well" cx={60} cy={45} r={36} />
      <path className="stroke-3" d={`M60 45L${end.x} ${end.y}`} />
      <circle className="fill-ink" cx={60} cy={19} r={4} />
      <ArcArrow r={26} from={-60} to={-14} />
      <circle cx={60} cy={45} r={5} />
    </Drawing>
  );
}

/** Wheels out of line: the fence rests on a rim. */
export function Fence() {
  return (
    <Drawing>
      <GatedWheel cx={44} cy={56} r={28} gate={70} />
      <GatedWheel cx={52} cy={56} r={28} gate={20} />
      <path className="fill-ink" d="M28 20H68V27H28Z" />
      <path className="stroke-accent" strokeWidth={2.4} d="M92 18V40M87 34L92 40L97 34" />
    </Drawing>
  );
}

/** The nose of the lever above the notch of the cam. */
export function LeverNose() {
  return (
    <Drawing>
      <GatedWheel cx={48} cy={60} r={28} gate={0} />
      <path className="fill-ink" d="M44 14H112V23H54V34H44Z" />
      <circle cx={106} cy={18.5} r={3} />
      <path className="stroke-accent" strokeWidth={2.4} d="M30 22V42M25 36L30 42L35 36" />
    </Drawing>
  );
}

/** Gates in line below the fence. */
export function Gate() {
  return (
    <Drawing>
      <GatedWheel cy={56} r={31} gate={0} />
      <path className="fill-ink" d="M56 12H64V33H56Z" />
      <path className="stroke-accent" strokeWidth={2.4} d="M80 14V32M75 26L80 32L85 26" />
    </Drawing>
  );
}

/** A bolt that goes into its strike. */
export function Strike() {
  return (
    <Drawing>
      <path className="fill-well" d="M6 20H58V70H6Z" />
      <path className="fill-ink" d="M40 36H80V54H40Z" />
      <path className="stroke-3" d="M72 14V34H92V56H72V76" />
      <path className="stroke-line" strokeWidth={1.2} d="M66 10V80" />
    </Drawing>
  );
}

/** The dial comes up against something solid. */
export function PositiveStop() {
  return (
    <Drawing>
      <circle className="fill-well" cx={60} cy={47} r={30} />
      <Ticks cy={47} r={30} />
      <path className="stroke-3" d="M88 20L104 36M84 24L88 20" />
      <ArcArrow cy={47} r={37} from={-50} to={40} />
    </Drawing>
  );
}
