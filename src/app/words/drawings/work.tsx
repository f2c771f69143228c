import { Drawing, GatedWheel, Label, Mark, Ticks } from "./parts";

/** A key with a winged bit. */
export function ChangeKey() {
  return (
    <Drawing>
      <circle className="fill-well" cx={22} cy={45} r={14} />
      <path className="stroke-3" d="M36 45H108" />
      <path className="fill-ink" d="M84 45H104V60H94V53H84Z" />
      <path className="fill-ink" d="M84 45H104V36H84Z" />
    </Drawing>
  );
}

/** The dial's zero under the index. */
export function Zero() {
  return (
    <Drawing>
      <circle className="fill-well" cx={60} cy={70} r={48} />
      <Ticks cx={60} cy={70} r={48} count={40} from={3} length={6} />
      <Mark cx={60} cy={70} r={49} degrees={0} length={12} />
      <path className="stroke-accent" strokeWidth={2.4} d="M63.800 22.100L62.800 34" />
      <Label x={66} y={46}>
        0
      </Label>
    </Drawing>
  );
}

/** A bolt held back by a slide. */
export function Holdback() {
  return (
    <Drawing>
      <path className="fill-well" d="M10 34H70V56H10Z" />
      <path className="stroke-3" d="M86 12V78" />
      <path className="fill-ink" d="M42 18H56V40H42Z" />
      <path strokeDasharray="4 4" d="M72 45H84" />
      <path className="stroke-accent" strokeWidth={2.4} d="M49 6V16" />
    </Drawing>
  );
}

/** A door, and the way out that always works. */
export function Egress() {
  return (
    <Drawing>
      <path className="fill-well" d="M44 10H86V80H44Z" />
      <path className="stroke-3" d="M50 46H66" />
      <path d="M14 80H112" />
      <circle className="fill-ink" cx={24} cy={38} r={5} />
      <path d="M24 44V62L18 78M24 62L30 78M24 50H38" />
      <path className="stroke-accent" strokeWidth={2.4} d="M92 46H112M106 41L112 46L106 51" />
    </Drawing>
  );
}

/** A list with checks and a line to sign. */
export function Record() {
  return (
    <Drawing>
      <path className="fill-well" d="M32 6H88V84H32Z" />
      <path className="stroke-line" strokeWidth={1.2} d="M52 22H80M52 36H80M52 50H80" />
      <path className="stroke-accent" strokeWidth={2.4} d="M39 22L42 25L47 18M39 36L42 39L47 32M39 50L42 53L47 46" />
      <path d="M40 74H80" />
      <path d="M44 72C48 62 52 76 56 68C60 64 60 74 68 70" />
    </Drawing>
  );
}

/** A range that reaches over the mark: nothing is shown yet. */
export function NotShown() {
  return (
    <Drawing>
      <path d="M10 60H110" />
      <path className="stroke-3" d="M70 24V70" />
      <path className="stroke-accent" strokeWidth={2.4} d="M36 44H94M36 38V50M94 38V50" />
      <circle className="fill-accent stroke-none" cx={64} cy={44} r={4} />
      <Label x={70} y={18}>
        pass mark
      </Label>
    </Drawing>
  );
}

/** Three openings in a row, with the door open. */
export function Proof() {
  return (
    <Drawing>
      <path className="fill-well" d="M10 10H40V80H10Z" />
      <path d="M40 10L58 20V88L40 80" />
      <path className="stroke-accent" strokeWidth={2.4} d="M72 26L77 32L88 18M72 50L77 56L88 42M72 74L77 80L88 66" />
    </Drawing>
  );
}

/** Gates a little wider than what falls into them. */
export function Tolerance() {
  return (
    <Drawing>
      <path className="fill-well" d="M6 80V44H38V66H82V44H114V80Z" />
      <path className="fill-ink" d="M50 12H70V60H50Z" />
      <path className="stroke-accent" strokeWidth={2.4} d="M39 54H49M43 51L39 54L43 57M81 54H71M77 51L81 54L77 57" />
    </Drawing>
  );
}

/** Cam and spindle held together by a key in a groove. */
export function SplineKey() {
  return (
    <Drawing>
      <GatedWheel r={36} gate={90} />
      <circle className="fill-well" cx={60} cy={45} r={15} />
      <path className="fill-accent stroke-none" d="M56 26H64V36H56Z" />
    </Drawing>
  );
}

/** A gap all round between dial and ring. */
export function Clearance() {
  return (
    <Drawing>
      <circle className="fill-well" cx={60} cy={45} r={40} />
      <circle strokeDasharray="4 4" cx={60} cy={45} r={33} />
      <circle className="fill-well" cx={60} cy={45} r={26} />
      <path className="stroke-accent" strokeWidth={2.4} d="M60 19V12" />
    </Drawing>
  );
}
