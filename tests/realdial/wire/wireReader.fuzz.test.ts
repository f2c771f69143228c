import { describe, expect, test } from "vitest";
import { WireReader } from "../../../src/realdial/wire/wireReader";
import { readDamaged } from "../../support/board/falseMotion";
import { draws } from "../../support/draws";
import { seeded } from "../../support/seeded";

const RANDOM = draws(10_000, 100_000);
const DAMAGED = draws(10_000, 100_000);

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
      const read = readDamaged(chance);
      moves += read.moves;
      if (read.falseMotion !== null) expect.fail(`sequence ${k}: ${read.falseMotion}`);
    }
    // Most of what is damaged leaves sound lines.
    expect(moves).toBeGreaterThan(DAMAGED);
  });
});
