import { describe, expect, test } from "vitest";
import type { GrayImage } from "../../../src/realdial/image/grayImage";
import { CameraMotion } from "../../../src/realdial/ordinary/camera/cameraMotion";
import { UNMOVED } from "../../../src/realdial/ordinary/camera/similarity";
import { seeded } from "../../support/seeded";

const SIDE = 180;
const MIDDLE = SIDE / 2;
const POSE = { middle: { x: MIDDLE, y: MIDDLE }, shape: [40, 0, 0, -40], lean: [0, 0] } as const;

const waves = (() => {
  const chance = seeded(6);
  return Array.from({ length: 40 }, () => ({ x: chance() - 0.5, y: chance() - 0.5, phase: 6.3 * chance() }));
})();

/** Pixels by which a hand moves what it covers. */
const CARRIED = 8;

/** How far a pixel of sectors that hands cover has moved: none in the first, to and fro in the second, all alike in the rest. */
function carried(u: number, v: number, [still, mixed]: readonly number[]): number {
  const around = (Math.atan2(v, u) + Math.PI) / (2 * Math.PI);
  if (around < (still ?? 1)) return 0;
  if (around < (still ?? 1) + (mixed ?? 0)) return 2 * Math.sign(Math.sin(60 * around));
  return CARRIED;
}

/**
 * A door with a pattern in no order, moved and turned about the middle, with noise of so many grays.
 *
 * @param moved.sectors - parts of the way around that stay and that are stirred; a hand carries the rest along
 */
function door(
  chance: () => number,
  { x = 0, y = 0, turn = 0, noise = 3, sectors = [1] as readonly number[] } = {},
): GrayImage {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const data = Uint8Array.from({ length: SIDE * SIDE }, (_, i) => {
    const [u0, v] = [(i % SIDE) - MIDDLE - x, Math.floor(i / SIDE) - MIDDLE - y];
    const u = u0 - carried(u0, v, sectors);
    const [p, q] = [c * u + s * v, c * v - s * u];
    const level = waves.reduce((sum, wave) => sum + Math.sin(wave.x * p + wave.y * q + wave.phase), 0);
    return 128 + 12 * level + noise * (chance() + chance() + chance() + chance() - 2) * Math.sqrt(3);
  });
  return { width: SIDE, height: SIDE, data };
}

describe("how a camera has moved since set-up", () => {
  test("on a stand it has not, whatever the noise says", () => {
    const chance = seeded(1);
    const camera = new CameraMotion(door(chance), POSE);
    for (let k = 0; k < 12; k++) expect(camera.follow(door(chance))).toMatchObject({ motion: UNMOVED, error: 0 });
  });

  test.each([
    { what: "pushed by half a pixel", x: 0.5, y: -0.2, turn: 0 },
    { what: "turned by a third of a degree", x: 0, y: 0, turn: 0.006 },
    { what: "pushed far", x: 3, y: 2, turn: 0.02 },
  ])("$what it is followed, and says how well it knows its turn", ({ x, y, turn }) => {
    const chance = seeded(2);
    const camera = new CameraMotion(door(chance), POSE);
    const seen = camera.follow(door(chance, { x, y, turn }));
    if (seen === null) throw new Error("not seen");
    const { a, b } = seen.motion;
    expect(Math.abs(Math.atan2(b, a) - turn)).toBeLessThan(4 * seen.error);
    expect(seen.error).toBeGreaterThan(0);
    expect(seen.error).toBeLessThan(0.003);
    expect(a * MIDDLE - b * MIDDLE + seen.motion.x - MIDDLE).toBeCloseTo(x, 0);
  });

  test.each([5, 6, 7, 8, 9])("no fewer patches follow a push than stay where they were (hand %i)", (seed) => {
    const chance = seeded(seed);
    const camera = new CameraMotion(door(chance), POSE);
    const image = door(chance, { sectors: [0.3, 0.5] });
    const stay = camera.patches.filter((patch) => {
      const { x, y } = patch.find(image, UNMOVED) ?? { x: 1e9, y: 1e9 };
      return Math.hypot(x - patch.at.x, y - patch.at.y) < 0.7;
    });
    const seen = camera.follow(image) ?? { motion: UNMOVED, alive: 0 };
    expect(seen.motion === UNMOVED || seen.alive >= stay.length).toBe(true);
  });

  test("a camera that stands where it stood is found there again, though a part of the picture went on", () => {
    const chance = seeded(4);
    const camera = new CameraMotion(door(chance), POSE);
    expect(camera.follow(door(chance, { x: 8 }))?.motion.x).toBeCloseTo(8, 0);
    expect(camera.follow(door(chance, { sectors: [0.6, 0] }))?.motion).toEqual(UNMOVED);
  });
});
