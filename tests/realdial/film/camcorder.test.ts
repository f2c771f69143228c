import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { Camcorder, type Picture } from "../../support/film/camcorder";
import { type Camera, seenAt } from "../../support/film/camera";
import { filmed, type Shooting } from "../../support/film/film";
import { motionOf } from "../../support/film/handMotion";
import { type Disc, EVEN_LIGHT, GOOD_SENSOR, type Scene, STRAIGHT_CAMERA, TRUE_DISC } from "../../support/film/scene";
import { evenTexture, partOf, textureOfSvg } from "../../support/film/texture";
import { writeY4m } from "../../support/film/y4m";
import { seeded } from "../../support/seeded";

/** A black disc with one white dot, 25 mm above its middle. */
const DOTTED = textureOfSvg(
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-40 -40 80 80"><rect x="-40" y="-40" width="80" height="80"/><circle cy="-25" r="3" fill="#fff"/></svg>',
  80,
  4,
);
const QUIET = { ...GOOD_SENSOR, readNoise: 0, shotNoise: 0, gamma: 1 } as const;
const TILTED: Camera = {
  ...STRAIGHT_CAMERA,
  distance: 200,
  tilt: 30,
  tiltFrom: 300,
  roll: 12,
  k1: -0.2,
  aim: { x: 4, y: -3 },
};

const sceneOf = (camera: Camera, disc: Partial<Disc>, turns: number): Scene => ({
  camera,
  light: EVEN_LIGHT,
  base: { texture: evenTexture(400, 400, 0) },
  disc: { ...TRUE_DISC, texture: DOTTED, radius: 38, ...disc },
  turns: () => turns,
});

function brightMiddle({ width, data }: Picture) {
  let [sum, x, y] = [0, 0, 0];
  data.forEach((gray, i) => {
    sum += gray;
    x += gray * ((i % width) + 0.5);
    y += gray * (Math.floor(i / width) + 0.5);
  });
  return { x: x / sum, y: y / sum };
}

describe("a camera sees a point of the disc where geometry puts it", () => {
  test.each<{ why: string; camera: Camera; disc: Partial<Disc>; turns: number; at: readonly [number, number, number] }>(
    [
      { why: "straight", camera: STRAIGHT_CAMERA, disc: {}, turns: 0, at: [0, 25, 8] },
      { why: "turned left a quarter", camera: STRAIGHT_CAMERA, disc: {}, turns: 0.25, at: [-25, 0, 8] },
      {
        why: "tilted, rolled, through a lens",
        camera: TILTED,
        disc: { seat: { x: 3, y: 2 } },
        turns: 0,
        at: [3, 27, 8],
      },
      { why: "a cone", camera: TILTED, disc: { cone: 6 }, turns: 0.5, at: [0, -25, 8 + 6 * (1 - 25 / 38)] },
      { why: "off center", camera: TILTED, disc: { offCenter: { x: 1, y: 0.5 } }, turns: 0.25, at: [-25.5, 1, 8] },
      {
        why: "leaning",
        camera: TILTED,
        disc: { wobble: 3, wobbleTo: 90 },
        turns: 0,
        at: [0, 25, 8 + 25 * Math.tan(Math.PI / 60)],
      },
      {
        why: "curled",
        camera: TILTED,
        disc: { curl: { rise: 50, direction: 90 } },
        turns: 0,
        at: [0, 25, 8 + 50 / 16],
      },
    ],
  )("$why", ({ camera, disc, turns, at }) => {
    const picture = new Camcorder(sceneOf(camera, { side: 0, ...disc }, turns), QUIET, seeded(1)).pictureAt(0);
    const expected = seenAt(camera, [...at]);
    const found = brightMiddle(picture);
    expect(Math.hypot(found.x - expected.x, found.y - expected.y)).toBeLessThan(0.15);
  });

  test("a camera that moves sees the same as one that stands where it is", () => {
    const shake = () => ({ x: 2, y: 1, z: 3, pitch: 0.01, yaw: -0.02, roll: 0.03 });
    const camera = { ...TILTED, shake };
    const found = brightMiddle(new Camcorder(sceneOf(camera, { side: 0 }, 0), QUIET, seeded(1)).pictureAt(0));
    const expected = seenAt(camera, [0, 25, 8]);
    expect(Math.hypot(found.x - expected.x, found.y - expected.y)).toBeLessThan(0.15);
  });
});

const SHOOTING: Shooting = {
  scene: {
    ...sceneOf({ ...STRAIGHT_CAMERA, width: 80, height: 60, focal: 80 }, {}, 0),
    knob: { radius: 9, height: 20, reflectance: 0.4, flutes: 12 },
  },
  sensor: { ...GOOD_SENSOR, blur: 0.6, readoutMs: 10 },
  motion: motionOf([{ by: 60, speed: 200, restMs: 200 }], { restMs: 100, graspMs: 50, grasp: 40 }),
  graduations: 100,
  framesPerSecond: 30,
  dropped: 0.2,
  chance: seeded(5),
};

describe("a film", () => {
  test("is the same for the same seed, and not for another", () => {
    const shot = (seed: number) =>
      [...filmed({ ...SHOOTING, chance: seeded(seed) })].map(({ picture }) =>
        Buffer.from(picture.data).toString("latin1"),
      );
    expect(shot(5)).toEqual(shot(5));
    expect(shot(6)).not.toEqual(shot(5));
  });

  test("says where the dial was, and leaves dropped frames out", () => {
    const frames = [...filmed(SHOOTING)];
    expect(frames.length).toBeLessThan((SHOOTING.motion.durationMs * 30) / 1000);
    expect(frames[0]?.truth.position).toBe(0);
    expect(frames.at(-1)?.truth.position).toBe(60);
    expect(Math.max(...frames.map(({ truth }) => truth.speed))).toBeGreaterThan(100);
  });

  test("a hand covers what is under it while it is there", () => {
    const hand = {
      fingers: [{ fromX: 0, fromY: 0, toX: 0, toY: 30, radius: 9 }],
      height: 30,
      reflectance: 0.1,
      place: (at: number) => (at < 50 ? { angle: 0, x: 0, y: 0 } : undefined),
    };
    const scene: Scene = { ...SHOOTING.scene, hand, turns: () => 0 };
    const camcorder = new Camcorder(
      { ...scene, light: { ...EVEN_LIGHT, cast: { x: 0, y: 0, depth: 0 } } },
      QUIET,
      seeded(1),
    );
    const brightest = (at: number) => Math.max(...camcorder.pictureAt(at).data.subarray(0, 80 * 28));
    expect(brightest(60)).toBeGreaterThan(100);
    expect(brightest(40)).toBeLessThan(60);
  });

  test("is written as a browser's fake camera reads it", () => {
    const folder = mkdtempSync(join(tmpdir(), "film-"));
    const file = join(folder, "film.y4m");
    const written = writeY4m(file, [{ width: 4, height: 2, data: new Uint8Array([0, 255, 0, 0, 0, 0, 0, 255]) }], 30);
    const bytes = readFileSync(file);
    rmSync(folder, { recursive: true });
    expect(written).toBe(1);
    const head = "YUV4MPEG2 W4 H2 F30:1 Ip A1:1 C420jpeg\nFRAME\n";
    expect(bytes.subarray(0, head.length).toString()).toBe(head);
    expect([...bytes.subarray(head.length)]).toEqual([16, 235, 16, 16, 16, 16, 16, 235, 128, 128, 128, 128]);
  });
});

test("a part of a drawing has its own middle", () => {
  const part = partOf(DOTTED, { x: 0, y: 25 }, 4, 4);
  expect([part.width, part.height]).toEqual([16, 16]);
  expect(Math.min(...part.data)).toBeGreaterThan(0.95);
});
