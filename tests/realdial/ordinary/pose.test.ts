import { describe, expect, test } from "vitest";
import { similarityThrough } from "../../../src/realdial/ordinary/camera/similarity";
import { combPhase } from "../../../src/realdial/ordinary/pose/flatten";
import { PoseSearch } from "../../../src/realdial/ordinary/pose/poseSearch";
import { AROUND } from "../../../src/realdial/ordinary/pose/ring";
import { Camcorder } from "../../support/film/camcorder";
import { seenAt } from "../../support/film/camera";
import { motionOf } from "../../support/film/handMotion";
import { PAPER_DIAL } from "../../support/film/ordinaryDial";
import { ordinaryFilm } from "../../support/film/ordinaryFilm";
import { seeded } from "../../support/seeded";

describe("marks around a ring", () => {
  test.each([50, 60, 100])("%i are counted, however they are bent", (graduations) => {
    const ring = Float64Array.from({ length: AROUND }, (_, i) => {
      const angle = (2 * Math.PI * i) / AROUND;
      return 100 + 50 * Math.cos(graduations * angle + 2 * Math.sin(angle) + 1);
    });
    const { count, graduations: at } = combPhase(ring, graduations);
    expect(count).toBeCloseTo(graduations, 6);
    const quarter = graduations / 4 + 2 / (2 * Math.PI);
    expect(at[AROUND / 4]).toBeCloseTo(quarter, 2);
  });
});

test("a similarity through points leaves out those without weight", () => {
  const from = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 0, y: 10 },
    { x: 5, y: 5 },
  ];
  const to = from.map(({ x, y }) => ({ x: 1.1 * x - 0.2 * y + 3, y: 0.2 * x + 1.1 * y - 4 }));
  const found = similarityThrough(from, [...to.slice(0, 3), { x: 90, y: 90 }], [1, 1, 1, 0])?.motion;
  expect(found?.a).toBeCloseTo(1.1, 9);
  expect(found?.b).toBeCloseTo(0.2, 9);
  expect(found?.x).toBeCloseTo(3, 9);
  expect(found?.y).toBeCloseTo(-4, 9);
});

describe("a dial is found from two taps that miss", () => {
  test.each([
    { why: "seen straight", tilt: 3, tiltFrom: 0, middle: [4, 2], index: [1.5, -1], look: {} },
    { why: "seen from below", tilt: 22, tiltFrom: 280, middle: [-2, 2], index: [-1.5, 1], look: {} },
    { why: "seen steeply from below", tilt: 35, tiltFrom: 246, middle: [-2, 3], index: [1, 0], look: {} },
    { why: "seen from the side, on paper", tilt: 25, tiltFrom: 20, middle: [2, -4], index: [1, 1], look: PAPER_DIAL },
  ])("$why", ({ tilt, tiltFrom, middle, index, look }) => {
    const camera = { width: 320, height: 240, focal: 300, tilt, tiltFrom, k1: -0.1, roll: 5 };
    const { scene, sensor } = ordinaryFilm({ motion: motionOf([]), chance: seeded(3), radius: 85, camera, look });
    const image = new Camcorder({ ...scene, turns: () => 0 }, sensor, seeded(3)).pictureAt(0);
    const tap = (x: number, y: number, z: number) => {
      const seen = seenAt(scene.camera, [x, y, z]);
      return { x: seen.x - 0.5, y: seen.y - 0.5 };
    };
    const taps = {
      middle: tap(middle[0] ?? 0, middle[1] ?? 0, scene.knob?.height ?? 0),
      index: tap(index[0] ?? 0, 40.6 + (index[1] ?? 0), 0),
    };
    const found = new PoseSearch(image, taps, 100).find();
    const is = tap(0, 0, scene.disc.height);
    expect(Math.round(found?.count ?? 0)).toBe(100);
    expect(found?.uneven).toBeLessThan(0.03);
    expect(Math.hypot((found?.pose.middle.x ?? 0) - is.x, (found?.pose.middle.y ?? 0) - is.y)).toBeLessThan(1);
  });

  test("and not where there is none", () => {
    const data = Uint8Array.from({ length: 320 * 240 }, (_, i) => (i * 7919) % 251);
    const found = new PoseSearch(
      { width: 320, height: 240, data },
      { middle: { x: 160, y: 120 }, index: { x: 160, y: 40 } },
      100,
    ).find();
    expect(found === null || found.uneven > 0.12 || Math.round(found.count) !== 100).toBe(true);
  });
});
