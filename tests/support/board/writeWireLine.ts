import { crc32 } from "node:zlib";
import type { WireLine } from "../../../src/realdial/wire/wireLine";

const LETTERS = { hello: "h", position: "p", button: "b", other: "o" } as const;

/** A text with its checksum behind it, reckoned by another implementation. */
export const withChecksum = (text: string): string => `${text}*${crc32(text).toString(16).padStart(8, "0")}`;

/** A line as a board writes it, without its end. */
export function writeWireLine(line: WireLine): string {
  const { seq, count, ms, start, missed } = line;
  const more = line.type === "hello" ? [line.countsPerTurn, line.version] : [];
  return withChecksum([LETTERS[line.type], seq, count, ms, start, missed, ...more].join(" "));
}
