import type { Milliseconds } from "../../lock/dial";
import { crc32 } from "./crc32";

/** The version of the lines that this reads. */
export const WIRE_VERSION = 1;

/** What a host sends to be greeted. */
export const ASK_HELLO = "?";

/** The longest line, characters without its end; what is longer is none. */
export const LONGEST_LINE = 80;

/** What every line of the board says. Each stands for itself, so a lost one costs nothing. */
interface Stamped {
  /** Number of the line since the board started, in [0, 65536), then from 0 again. */
  readonly seq: number;
  /** Steps counted since the board started, positive as line A leads line B; of 32 bits with a sign. */
  readonly count: number;
  /** Time since the board started, in [0, 2^32), then from 0 again. */
  readonly ms: Milliseconds;
  /** Which start of the board this is, in [0, 256), then from 0 again. */
  readonly start: number;
  /** Steps that both lines of the encoder took at once, so that their direction is not known, since the board started; at most 65535. */
  readonly missed: number;
}

/** It comes as the board starts, and when it is asked. */
export interface Hello extends Stamped {
  readonly type: "hello";
  /** Steps in one turn of the encoder. */
  readonly countsPerTurn: number;
  readonly version: number;
}

/**
 * A sound line.
 *
 * `position` comes at most every 8 ms while the count changes, and every 250 ms at rest; `button` once a press. A line of
 * another kind is one like `position`, from a board that has more to say.
 */
export type WireLine = Hello | (Stamped & { readonly type: "position" | "button" | "other" });

const SOUND = /^([a-z])((?: (?:0|-?[1-9]\d{0,9}))+)\*([0-9a-f]{8})$/;
const TYPES: Readonly<Record<string, "position" | "button">> = { p: "position", b: "button" };

const isWithin = (value: number | undefined, low: number, high: number): value is number =>
  value !== undefined && value >= low && value <= high;

function stampOf([seq, count, ms, start, missed]: readonly number[]): Stamped | null {
  const isStamp =
    isWithin(seq, 0, 0xffff) &&
    isWithin(count, -(2 ** 31), 2 ** 31 - 1) &&
    isWithin(ms, 0, 2 ** 32 - 1) &&
    isWithin(start, 0, 0xff) &&
    isWithin(missed, 0, 0xffff);
  return isStamp ? { seq, count, ms, start, missed } : null;
}

/**
 * Reads a line: `type seq count ms start missed*crc`, of a hello `h seq count ms start missed counts-a-turn version*crc`. The
 * checksum is of all before the asterisk.
 *
 * @param text - without its end
 * @returns null for whatever is no sound line
 */
export function readWireLine(text: string): WireLine | null {
  const [, letter = "", fields = "", checksum = ""] = SOUND.exec(text) ?? [];
  if (letter === "" || Number.parseInt(checksum, 16) !== crc32(text.slice(0, -9))) return null;
  const numbers = fields.slice(1).split(" ").map(Number);
  const stamp = stampOf(numbers);
  if (stamp === null) return null;
  if (letter !== "h") return { ...stamp, type: TYPES[letter] ?? "other" };
  const [, , , , , countsPerTurn, version] = numbers;
  if (!isWithin(countsPerTurn, 4, 1e6) || !isWithin(version, 1, 1e6)) return null;
  return { ...stamp, type: "hello", countsPerTurn, version };
}
