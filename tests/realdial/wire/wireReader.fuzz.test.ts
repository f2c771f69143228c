import { describe, expect, test } from "vitest";
import type { WireEvent } from "../../../src/realdial/wire/wireEvent";
import type { WireLine } from "../../../src/realdial/wire/wireLine";
import { WireReader } from "../../../src/realdial/wire/wireReader";
import { damaged, sentLines } from "../../support/board/sentLines";
import { seeded } from "../../support/seeded";

const RANDOM = 50_000;
const DAMAGED = 50_000;

/** Each stretch from a hello on: where the dial was taken to be after each move, in steps since that hello. */
function stretches(events: readonly WireEvent[]): number[][] {
  const found: number[][] = [];
  let last = 0;
  let base = 0;
  for (const event of events) {
    if (event.type === "ready") {
      base = last;
      found.push([]);
    } else if (event.type === "moved") {
      // Four steps a turn: whole numbers, exactly.
      last = event.turns * 4;
      found.at(-1)?.push(last - base);
    }
  }
  return found;
}

/** Whether what was sent since one of the hellos says these places, in this order, whatever else it says between. */
const isSaid = (places: readonly number[], sent: readonly WireLine[]): boolean =>
  sent.some((hello, from) => {
    if (hello.type !== "hello") return false;
    let next = 0;
    for (const { start, count } of sent.slice(from)) {
      if (start === hello.start && count - hello.count === places[next]) next += 1;
    }
    return next >= places.length;
  });

describe("a reader of an encoder's lines, fed with anything,", () => {
  test("survives and makes no motion of random bytes", () => {
    const chance = seeded(20261129);
    const letters = [..."hpb?*- 0123456789abcdef\r\n"].map((letter) => letter.charCodeAt(0));
    for (let k = 0; k < RANDOM; k++) {
      const reader = new WireReader(0);
      const isLikely = k % 2 === 0;
      const bytes = Uint8Array.from({ length: 1 + Math.floor(chance() * 200) }, () =>
        isLikely ? (letters[Math.floor(chance() * letters.length)] ?? 0) : Math.floor(chance() * 256),
      );
      const events = reader.take(bytes, 10);
      if (events.length > 0) expect.fail(`sequence ${k}: ${JSON.stringify(events)} of ${bytes}`);
    }
  });

  test("makes no motion of damaged lines that undamaged ones would not make", () => {
    const chance = seeded(115_200);
    let moves = 0;
    for (let k = 0; k < DAMAGED; k++) {
      const sent = sentLines(chance, 3 + Math.floor(chance() * 12));
      const bytes = damaged(sent, 1 + Math.floor(chance() * 5), chance);
      const reader = new WireReader(0);
      const cut = Math.floor(chance() * bytes.length);
      const events = [...reader.take(bytes.slice(0, cut), 1), ...reader.take(bytes.slice(cut), 2)];
      for (const places of stretches(events)) {
        moves += places.length;
        if (!isSaid(places, sent)) expect.fail(`sequence ${k}: ${places} of ${new TextDecoder().decode(bytes)}`);
      }
    }
    // Most of what is damaged leaves sound lines.
    expect(moves).toBeGreaterThan(DAMAGED);
  });
});
