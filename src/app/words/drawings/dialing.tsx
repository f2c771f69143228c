import { ArcArrow, DialDisc, Drawing, Label, Mark } from "./parts";

/** Four times onto a number: a spiral that passes the index three times and stops the fourth. */
export function Arrivals() {
  return (
    <Drawing>
      <path d="M60 40A5 5 0 0 0 60 52A10 10 0 0 0 60 32A14 14 0 0 0 60 60A18 18 0 0 0 60 24A22 22 0 0 0 60 68A26.5 26.5 0 0 0 60 15" />
      <path className="stroke-line" strokeWidth={1.2} d="M60 6V42" />
      <circle className="fill-ink" cx={60} cy={40} r={2.6} />
      <circle className="fill-ink" cx={60} cy={32} r={2.6} />
      <circle className="fill-ink" cx={60} cy={24} r={2.6} />
      <circle className="fill-accent stroke-none" cx={60} cy={15} r={4.4} />
      <Label x={75} y={14}>
        stop
      </Label>
    </Drawing>
  );
}

/** A run that ends in a stop on the number. */
export function Stop() {
  return (
    <Drawing>
      <DialDisc cy={50} r={32} />
      <Mark cy={50} r={33} degrees={0} />
      <ArcArrow cy={50} r={39} from={75} to={6} />
      <circle className="fill-accent stroke-none" cx={60} cy={21} r={3.6} />
    </Drawing>
  );
}

/** How far a stop is from its number. */
export function StopError() {
  return (
    <Drawing>
      <path d="M8 56H112" />
      <path className="stroke-line" strokeWidth={1.2} d="M20 56V44M40 56V44M80 56V44M100 56V44" />
      <path className="stroke-3" d="M60 56V28" />
      <circle className="fill-accent stroke-none" cx={86} cy={56} r={4.4} />
      <path className="stroke-accent" strokeWidth={2.4} d="M61 70H85M65 66L61 70L65 74M81 66L85 70L81 74" />
      <Label x={60} y={22}>
        number
      </Label>
    </Drawing>
  );
}

/** Past the number, and back again: the wheel does not come back with the dial. */
export function CameBack() {
  return (
    <Drawing>
      <path className="stroke-3" d="M60 10V80" />
      <path className="stroke-accent" strokeWidth={2.4} d="M12 30H90M84 25L90 30L84 35" />
      <path strokeDasharray="4 4" d="M90 30C104 30 104 58 90 58H64M70 53L64 58L70 63" />
      <circle className="fill-ink" cx={90} cy={30} r={4} />
    </Drawing>
  );
}

/** Left and right, as you face the dial. */
export function Turning() {
  return (
    <Drawing>
      <DialDisc cy={52} r={24} />
      <ArcArrow cy={52} r={34} from={-8} to={-75} />
      <ArcArrow cy={52} r={34} from={8} to={75} />
      <Label x={16} y={18}>
        left
      </Label>
      <Label x={103} y={18}>
        right
      </Label>
    </Drawing>
  );
}

/** Round and round one way. */
export function SpinOff() {
  return (
    <Drawing>
      <ArcArrow r={38} from={0} to={300} />
      <ArcArrow r={28} from={0} to={300} />
      <ArcArrow r={18} from={0} to={300} />
      <circle className="fill-ink" cx={60} cy={45} r={4} />
    </Drawing>
  );
}

/** The dial turned on, and the bolt drawn back by it. */
export function Draw() {
  return (
    <Drawing>
      <DialDisc cx={36} cy={50} r={25} />
      <ArcArrow cx={36} cy={50} r={32} from={-40} to={60} />
      <path className="fill-well" d="M74 40H112V60H74Z" />
      <path className="stroke-accent" strokeWidth={2.4} d="M108 74H80M86 69L80 74L86 79" />
    </Drawing>
  );
}

/** Lost motion: the dial turns a little before the cam does. */
export function LostMotion() {
  return (
    <Drawing>
      <path className="fill-well" d="M20 30H100V44H20Z" />
      <path className="fill-ink" d="M48 50H60V72H48Z" />
      <path className="stroke-3" d="M40 44V66M80 44V66" />
      <path className="stroke-accent" strokeWidth={2.4} d="M61 58H79M75 54L79 58L75 62" />
      <Label x={60} y={22}>
        dial
      </Label>
      <Label x={54} y={84}>
        cam
      </Label>
    </Drawing>
  );
}

/** Stops close together, and stops far apart. */
export function Spread() {
  return (
    <Drawing>
      <path d="M10 34H110M10 70H110" />
      <circle className="fill-accent stroke-none" cx={55} cy={34} r={3.6} />
      <circle className="fill-accent stroke-none" cx={61} cy={34} r={3.6} />
      <circle className="fill-accent stroke-none" cx={66} cy={34} r={3.6} />
      <circle className="fill-accent stroke-none" cx={28} cy={70} r={3.6} />
      <circle className="fill-accent stroke-none" cx={62} cy={70} r={3.6} />
      <circle className="fill-accent stroke-none" cx={98} cy={70} r={3.6} />
      <path className="stroke-line" strokeWidth={1.2} d="M28 56H98M28 52V60M98 52V60" />
    </Drawing>
  );
}
