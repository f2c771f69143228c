import type { WireLine } from "../../../src/realdial/wire/wireLine";
import { writeWireLine } from "./writeWireLine";

/** What a board does between two lines, by a throw of the dice. */
function livedOn(before: WireLine, dice: number, below: (limit: number) => number): WireLine {
  const { type: _, ...last } = before;
  const isRest = dice < 3;
  const stamp = {
    seq: (last.seq + 1) & 0xffff,
    count: last.count + (isRest ? 0 : below(600) - 300),
    ms: last.ms + (isRest ? 250 : 8),
    start: last.start,
    missed: last.missed + (dice === 4 ? 1 : 0),
  };
  if (dice === 5) return { ...HELLO, start: (last.start + 1) & 0xff };
  if (dice === 6) return { ...HELLO, ...stamp };
  return { type: dice === 7 ? "button" : "position", ...stamp };
}

const HELLO = { type: "hello", seq: 0, count: 0, ms: 0, start: 0, missed: 0, countsPerTurn: 4096, version: 1 } as const;

/** A stretch of a board's life: what it sent, line by line. It starts anew now and then. */
export function sentLines(chance: () => number, lines: number): WireLine[] {
  const below = (limit: number) => Math.floor(chance() * limit);
  const sent: WireLine[] = [{ ...HELLO, start: below(256) }];
  while (sent.length < lines) sent.push(livedOn(sent.at(-1) ?? HELLO, below(20), below));
  return sent;
}

/** The ways in which a cable, a system or a hostile stranger spoils bytes. */
const DAMAGES: readonly ((bytes: number[], below: (limit: number) => number) => void)[] = [
  (bytes, below) => {
    const at = below(bytes.length);
    bytes[at] = (bytes[at] ?? 0) ^ (1 << below(8));
  },
  (bytes, below) => bytes.splice(below(bytes.length), 1 + below(20)),
  (bytes, below) => bytes.splice(below(bytes.length), 0, ...Array.from({ length: 1 + below(6) }, () => below(256))),
  // A digit for a digit: what still looks like a line.
  (bytes, below) => {
    const isDigit = (at: number) => (bytes[at] ?? 0) >= 48 && (bytes[at] ?? 0) <= 57;
    for (let k = 0; k < 30; k++) {
      const at = below(bytes.length);
      if (isDigit(at) && below(10) === 0) bytes[at] = 48 + below(10);
    }
  },
  // A piece comes twice.
  (bytes, below) => {
    const from = below(bytes.length);
    bytes.splice(below(bytes.length), 0, ...bytes.slice(from, from + below(60)));
  },
  (bytes, below) => bytes.splice(below(bytes.length)),
  // The end of a line is lost.
  (bytes, below) => {
    const at = bytes.indexOf(10, below(bytes.length));
    if (at >= 0) bytes.splice(at, 1);
  },
];

/** Lines as bytes, damaged so many times. */
export function damaged(lines: readonly WireLine[], times: number, chance: () => number): Uint8Array {
  const below = (limit: number) => Math.floor(chance() * limit);
  const bytes = Array.from(Buffer.from(lines.map((line) => `${writeWireLine(line)}\n`).join("")));
  for (let k = 0; k < times; k++) DAMAGES[below(DAMAGES.length)]?.(bytes, below);
  return Uint8Array.from(bytes);
}
