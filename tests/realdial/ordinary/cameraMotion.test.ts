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

/** A door with a pattern in no order, moved and turned about the middle, with noise of so many grays. */
function door(chance: () => number, { x = 0, y = 0, turn = 0, noise = 3 } = {}): GrayImage {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const data = Uint8Array.from({ length: SIDE * SIDE }, (_, i) => {
    const [u, v] = [(i % SIDE) - MIDDLE - x, Math.floor(i / SIDE) - MIDDLE - y];
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
});
