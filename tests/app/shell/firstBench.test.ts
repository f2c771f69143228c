import { expect, test } from "vitest";
import { addressOf, benchAddress } from "../../../src/app/exercises/bench/benchAddress";
import { BenchSession } from "../../../src/app/exercises/bench/benchSession";
import { dialRotation } from "../../../src/app/hand/dial/dialGeometry";
import { FIRST_FACE } from "../../../src/app/hand/dial/firstFace";
import { parseRoute } from "../../../src/app/shell/address";
import { FIRST_BENCH, firstTurn, isFirstBench, seedAtZero } from "../../../src/app/shell/firstBench";

/** The bench that an address without a query brings. */
const benchOf = (seed: number) => benchAddress(new URLSearchParams(), { help: "full", seed });

test("the picture is of the bench that is asked for nothing, and has its face", () => {
  const { setup } = benchOf(1);
  expect(addressOf(setup)).toBe(`#/bench?${FIRST_BENCH}`);
  expect(setup.profile).toMatchObject(FIRST_FACE);
});

test("the picture shows the dial where the bench of the same seed has it", () => {
  for (const seed of [1, 2, 3, 77, 2 ** 32 - 1]) {
    const { setup, chance } = benchOf(seed);
    const { dial } = new BenchSession(setup, chance);
    expect(firstTurn(seed).dial).toBe(dialRotation(dial, FIRST_FACE.graduations));
  }
  const { setup, chance } = benchOf(seedAtZero());
  expect(new BenchSession(setup, chance).dial).toBe(0);
});

test("the knob is turned by less than a flute, and looks turned as far as the dial", () => {
  for (const seed of [1, 2, 3, 77]) {
    const { dial, knob } = firstTurn(seed);
    expect(Math.abs(knob)).toBeLessThan(24);
    expect((dial - knob) / 24).toBeCloseTo(Math.round((dial - knob) / 24), 9);
  }
});

test.each([
  ["#/bench", true],
  ["#bench", true],
  [`#/bench?${FIRST_BENCH}`, true],
  ["#/bench?profile=two-wheel&help=full", false],
  ["#/bench?profile=three-wheel&help=silent", false],
  ["#/bench?seed=5", false],
  ["#/start", false],
  ["", false],
])("%s has its picture in the page: %s", (hash, is) => {
  expect(isFirstBench(parseRoute(hash))).toBe(is);
});
