import { describe, expect, test } from "vitest";
import type { WireLine } from "../../../src/realdial/wire/wireLine";
import { WireReader } from "../../../src/realdial/wire/wireReader";
import { withChecksum, writeWireLine } from "../../support/board/writeWireLine";

type Said = Partial<WireLine> & { readonly type: WireLine["type"] };

const line = (said: Said): WireLine =>
  ({ seq: 0, count: 0, ms: 0, start: 1, missed: 0, ...(said.type === "hello" ? HELLO : {}), ...said }) as WireLine;
const HELLO = { countsPerTurn: 2400, version: 1 };
const hello = (said: Partial<WireLine> = {}) => line({ type: "hello", ...said } as Said);
const at = (seq: number, count: number, more: Partial<WireLine> = {}) =>
  line({ type: "position", seq, count, ms: seq * 8, ...more } as Said);
const button = (seq: number, count: number) => line({ type: "button", seq, count, ms: seq * 8 });

const bytesOf = (text: string) => new TextEncoder().encode(text);
const text = (lines: readonly WireLine[]) => lines.map((one) => `${writeWireLine(one)}\n`).join("");

/** What a reader makes of lines, each arriving 3 ms after it was written. */
function heard(lines: readonly (WireLine | string)[]) {
  const reader = new WireReader(0);
  const events = lines.flatMap((one) =>
    typeof one === "string" ? reader.take(bytesOf(one), 0) : reader.take(bytesOf(text([one])), one.ms + 3),
  );
  const turns = events.flatMap((event) => (event.type === "moved" ? [event.turns * 2400] : []));
  return { reader, events, turns, types: events.map(({ type }) => type) };
}

describe("a reader of an encoder's lines", () => {
  test.each<{ why: string; lines: (WireLine | string)[]; steps: number[]; types: string[] }>([
    {
      why: "counts from the hello on",
      lines: [hello(), at(1, 5), at(2, -7)],
      steps: [5, -7],
      types: ["ready", "moved", "moved"],
    },
    {
      why: "counts nothing before it",
      lines: [at(1, 5), at(2, 9), hello({ seq: 3, count: 9, ms: 24 }), at(4, 12)],
      steps: [3],
      types: ["ready", "moved"],
    },
    { why: "says nothing of a dial at rest", lines: [hello(), at(1, 0), at(2, 0)], steps: [], types: ["ready"] },
    {
      why: "loses nothing with a lost line",
      lines: [hello(), at(1, 5), at(4, 20)],
      steps: [5, 20],
      types: ["ready", "moved", "moved"],
    },
    {
      why: "drops what is damaged",
      lines: [hello(), "p 1 5 8 1 0*00000000\n", "\u0001\n", at(2, 7)],
      steps: [7],
      types: ["ready", "moved"],
    },
    {
      why: "drops what comes twice",
      lines: [hello(), at(1, 5), at(1, 5), at(2, 6)],
      steps: [5, 6],
      types: ["ready", "moved", "moved"],
    },
    {
      why: "drops what comes late",
      lines: [hello(), at(2, 6), at(1, 5), at(3, 8)],
      steps: [6, 8],
      types: ["ready", "moved", "moved"],
    },
    {
      why: "tells a press and where it was",
      lines: [hello(), at(1, 5), button(2, 5), button(3, 6)],
      steps: [5, 6],
      types: ["ready", "moved", "pressed", "moved", "pressed"],
    },
    {
      why: "tells steps that had no direction",
      lines: [hello(), at(1, 5, { missed: 3 }), at(2, 6, { missed: 3 })],
      steps: [5, 6],
      types: ["ready", "missed", "moved", "moved"],
    },
    {
      why: "takes an old fault of the encoder for none",
      lines: [hello({ missed: 9 }), at(1, 5, { missed: 9 })],
      steps: [5],
      types: ["ready", "moved"],
    },
    {
      why: "goes on from where it was when the board starts anew",
      lines: [hello(), at(1, 50), hello({ start: 2 }), at(1, 5, { start: 2 })],
      steps: [50, 55],
      types: ["ready", "moved", "restarted", "ready", "moved"],
    },
    {
      why: "waits for a hello where that of a new start was lost",
      lines: [
        hello(),
        at(1, 50),
        at(1, 5, { start: 2 }),
        at(2, 9, { start: 2 }),
        hello({ start: 2, seq: 3, count: 9, ms: 24 }),
        at(4, 10, { start: 2 }),
      ],
      steps: [50, 51],
      types: ["ready", "moved", "restarted", "ready", "moved"],
    },
    {
      why: "takes a start under the same number for one, after some lines",
      lines: [
        hello(),
        at(900, 50, { ms: 100 }),
        ...[1, 2, 3, 4, 5].map((k) => at(k, 2 * k)),
        hello({ seq: 6, count: 12, ms: 48 }),
        at(7, 13),
      ],
      steps: [50, 51],
      types: ["ready", "moved", "restarted", "ready", "moved"],
    },
    {
      why: "tells a gap in which it moved",
      lines: [hello(), at(1, 5), at(90, 5 + 2400)],
      steps: [5, 2405],
      types: ["ready", "moved", "gap", "moved"],
    },
    {
      why: "tells no gap where it stood meanwhile",
      lines: [hello(), at(1, 5), at(90, 5), at(91, 6)],
      steps: [5, 6],
      types: ["ready", "moved", "moved"],
    },
    {
      why: "counts on where 32 bits end",
      lines: [hello({ count: 2 ** 31 - 2 }), at(1, -(2 ** 31) + 3)],
      steps: [5],
      types: ["ready", "moved"],
    },
    {
      why: "counts on where the clock's 32 bits end",
      lines: [hello({ ms: 2 ** 32 - 4, seq: 65_535 }), at(0, 5, { ms: 4 })],
      steps: [5],
      types: ["ready", "moved"],
    },
    {
      why: "does not follow a version that it does not know",
      lines: [hello({ version: 2 } as Partial<WireLine>), at(1, 5)],
      steps: [],
      types: ["newer"],
    },
    {
      why: "makes nothing of another program's words",
      lines: ["Hello, world\n", "x\n", "12,34\n"],
      steps: [],
      types: [],
    },
  ])("$why", ({ lines, steps, types }) => {
    const { turns, types: told } = heard(lines);
    expect(turns.map((steps) => Math.round(steps * 1e6) / 1e6)).toEqual(steps);
    expect(told).toEqual(types);
  });

  test("says how many lines were sound, bad, stale and lost", () => {
    const { reader } = heard([
      hello(),
      at(1, 5),
      "garbage\n",
      at(1, 5),
      at(5, 6),
      hello({ start: 2 }),
      at(2, 1, { start: 2 }),
    ]);
    expect(reader.tally).toEqual({ read: 6, bad: 1, stale: 1, lost: 4 });
  });

  test("counts lost lines where their numbers begin again", () => {
    const { reader } = heard([hello({ seq: 65_534 }), at(1, 5, { ms: 8 })]);
    expect(reader.tally.lost).toBe(2);
  });

  test("keeps no more than a line: what is longer is none, sound or not", () => {
    const { reader } = heard([hello(), `${withChecksum(`t 1 2 3 4 5${" 7".repeat(40)}`)}\n`, at(2, 5)]);
    expect(reader.tally).toMatchObject({ read: 2, bad: 1 });
  });

  test("reads the same however the bytes are cut", () => {
    const bytes = bytesOf(text([hello(), at(1, 5), button(2, 9), at(3, -20)]));
    const whole = new WireReader(0).take(bytes, 30);
    for (const size of [1, 2, 7, 64]) {
      const reader = new WireReader(0);
      const pieces = Array.from({ length: Math.ceil(bytes.length / size) }, (_, k) =>
        bytes.slice(k * size, (k + 1) * size),
      );
      expect(pieces.flatMap((piece) => reader.take(piece, 30))).toEqual(whole);
    }
  });

  test("lines that a page was given late in one piece lie apart as on the board, and none in the future", () => {
    const reader = new WireReader(0);
    reader.take(bytesOf(text([hello()])), 1000);
    reader.take(bytesOf(text([at(1, 5)])), 1010);
    const late = reader.take(bytesOf(text([at(2, 6), at(3, 7), at(4, 8)])), 1100);
    const times = late.map((event) => ("at" in event ? event.at : 0));
    expect(times.map((time, k) => time - (times[k - 1] ?? time))).toEqual([0, 8, 8]);
    expect(Math.max(...times)).toBeLessThanOrEqual(1100);
    expect(times[0]).toBeCloseTo(1018, 6);
  });

  test("a clock that runs off by half a percent is followed", () => {
    const reader = new WireReader(0);
    reader.take(bytesOf(text([hello()])), 0);
    let last = 0;
    for (let seq = 1; seq < 4000; seq++) {
      const [moved] = reader.take(bytesOf(text([at(seq, seq)])), seq * 8 * 1.005);
      last = moved !== undefined && "at" in moved ? moved.at : 0;
    }
    expect(3999 * 8 * 1.005 - last).toBeLessThan(11);
  });

  test("says that nothing has spoken, and that nothing speaks any more", () => {
    const reader = new WireReader(100);
    expect(reader.silence(4000)).toBeNull();
    expect(reader.silence(4200)).toBe("no-hello");
    reader.take(bytesOf(text([hello()])), 5000);
    expect(reader.silence(6000)).toBeNull();
    expect(reader.silence(6600)).toBe("silent");
  });

  test("wants a hello until it has one, and again when the board has started anew", () => {
    const reader = new WireReader(0);
    expect(reader.wantsHello).toBe(true);
    reader.take(bytesOf(text([hello()])), 0);
    expect(reader.wantsHello).toBe(false);
    reader.take(bytesOf(text([at(1, 5, { start: 2 })])), 9);
    expect(reader.wantsHello).toBe(true);
  });
});
