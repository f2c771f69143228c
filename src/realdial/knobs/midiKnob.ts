import { evenTurn, type Learned, mostOf } from "./learned";

/** A control change: MIDI 1.0, status B0 to BF. */
export interface ControlChange {
  /** From 0. */
  readonly channel: number;
  readonly controller: number;
  /** From 0 to 127. */
  readonly value: number;
}

/** @param bytes - one message @returns null for a message of another kind */
export function readControlChange([status = 0, controller, value]: Uint8Array): ControlChange | null {
  if ((status & 0xf0) !== 0xb0 || controller === undefined || value === undefined) return null;
  return { channel: status & 0x0f, controller, value };
}

const UP = 96;
const DOWN = 97;

/**
 * Steps that a value stands for. Data increment and decrement are controllers 96 and 97 of MIDI 1.0; the other three are
 * common practice, no source: two's complement of 7 bits, sign and size, offset from 64.
 */
const STEPS = {
  increment: ({ controller }) => (controller === UP ? 1 : controller === DOWN ? -1 : 0),
  "twos-complement": ({ value }) => (value < 64 ? value : value - 128),
  "sign-and-size": ({ value }) => (value < 64 ? value : 64 - value),
  "offset-64": ({ value }) => value - 64,
} as const satisfies Readonly<Record<string, (change: ControlChange) => number>>;

/** How a knob without ends says how far it turned. */
export type Encoding = keyof typeof STEPS;

/** All of them. */
export const ENCODINGS = Object.keys(STEPS) as Encoding[];

/** A knob without ends, as it was learned by turning it. */
export interface MidiKnob {
  readonly channel: number;
  /** With `increment` both 96 and 97 are its own. */
  readonly controller: number;
  readonly encoding: Encoding;
  /** Steps in one turn to the left; negative where they count down there. */
  readonly perTurn: number;
}

const isIncrement = ({ controller }: ControlChange) => controller === UP || controller === DOWN;
/** Both controllers of an increment are one knob. */
const knobOf = (change: ControlChange) => `${change.channel} ${isIncrement(change) ? UP : change.controller}`;

/** Steps that a control change of this knob stands for; 0 for one of another. */
export function midiSteps({ channel, controller, encoding }: MidiKnob, change: ControlChange): number {
  const isOwn = change.channel === channel && (change.controller === controller || encoding === "increment");
  return isOwn ? STEPS[encoding](change) : 0;
}

const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);

/** Steps of both turns, if an encoding makes one direction of each, and the two opposite. */
function turnsBy(encoding: Encoding, left: readonly ControlChange[], right: readonly ControlChange[]) {
  const steps = [left, right].map((turn) => turn.map(STEPS[encoding]).filter((one) => one !== 0));
  const [toLeft = [], toRight = []] = steps;
  const sign = Math.sign(toLeft[0] ?? 0);
  const isOneWayEach =
    sign !== 0 && toRight.length > 0 && toLeft.every((one) => one * sign > 0) && toRight.every((one) => one * sign < 0);
  return isOneWayEach ? { encoding, left: sum(toLeft), right: sum(toRight) } : null;
}

/**
 * Learns how a knob speaks, by one whole turn left and one right.
 *
 * An encoding must make each turn go one way, and the two opposite. Of those that do, the one with the smallest steps
 * is meant: read by another, a small step is one of some sixty.
 */
export function learnMidiKnob(left: readonly ControlChange[], right: readonly ControlChange[]): Learned<MidiKnob> {
  const all = [...left, ...right];
  const [first] = all;
  if (first === undefined || left.length === 0 || right.length === 0) return { failed: "nothing" };
  const knob = mostOf(all.map(knobOf));
  if (knob === undefined) return { failed: "more-than-one" };
  const [ownLeft = [], ownRight = []] = [left, right].map((turn) => turn.filter((change) => knobOf(change) === knob));
  const own = ownLeft[0] ?? ownRight[0] ?? first;
  const readings = ENCODINGS.filter((encoding) => (encoding === "increment") === isIncrement(own))
    .flatMap((encoding) => turnsBy(encoding, ownLeft, ownRight) ?? [])
    .sort((a, b) => Math.abs(a.left) - Math.abs(b.left) + Math.abs(a.right) - Math.abs(b.right));
  const [reading] = readings;
  if (reading === undefined) return { failed: "has-ends" };
  const perTurn = evenTurn(reading.left, reading.right);
  if (perTurn === null) return { failed: "uneven" };
  const { channel, controller } = own;
  return { knob: { channel, controller, encoding: reading.encoding, perTurn: Math.sign(reading.left) * perTurn } };
}
