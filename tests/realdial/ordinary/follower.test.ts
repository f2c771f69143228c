import { beforeAll, describe, expect, test } from "vitest";
import { OrdinaryFollower } from "../../../src/realdial/ordinary/follower";
import type { DialReference } from "../../../src/realdial/ordinary/reference";
import { type FilmFrame, filmed } from "../../support/film/film";
import { motionOf } from "../../support/film/handMotion";
import { PAPER_DIAL } from "../../support/film/ordinaryDial";
import { GRIPS, type OrdinaryFilm, ordinaryFilm } from "../../support/film/ordinaryFilm";
import { setUpByFilm } from "../../support/film/ordinaryTrial";
import { seeded } from "../../support/seeded";

/** Small and sharp, since each picture takes a while to make. */
const SMALL: Omit<OrdinaryFilm, "motion" | "chance"> = {
  camera: { width: 180, height: 160, focal: 240, tilt: 15, k1: -0.05 },
  radius: 60,
  fingers: GRIPS.tips,
  sensor: { moments: 1, exposureMs: 2 },
};
const MISSES = { middle: [1, 2], index: [1, 0] } as const;
const TURN_s = 4.2;
const TIMEOUT_MS = 90_000;

const { width, height } = { width: 180, height: 160 };
const chance = seeded(5);

/** Pictures that show no dial, by what they are. */
const STRANGE: Readonly<Record<string, () => Uint8Array>> = {
  black: () => new Uint8Array(width * height),
  white: () => new Uint8Array(width * height).fill(255),
  noise: () => Uint8Array.from({ length: width * height }, () => Math.floor(256 * chance())),
  "stripes of some width": () => {
    const [wide, slant] = [2 + 20 * chance(), chance()];
    return Uint8Array.from({ length: width * height }, (_, i) =>
      Math.sin(((i % width) + slant * Math.floor(i / width)) / wide) > 0 ? 220 : 20,
    );
  },
  "rings about the middle": () => {
    const wide = 0.5 + 5 * chance();
    return Uint8Array.from({ length: width * height }, (_, i) =>
      Math.round(127 + 120 * Math.sin(Math.hypot((i % width) - 90, Math.floor(i / width) - 80) / wide)),
    );
  },
};

describe("an ordinary dial, once it is set up,", () => {
  let reference: DialReference;
  let frames: FilmFrame[];
  beforeAll(() => {
    const found = setUpByFilm({ ...SMALL, chance: seeded(1) }, MISSES, TURN_s);
    if ("code" in found) throw new Error(JSON.stringify(found));
    reference = found;
    const motion = motionOf(
      [
        { by: 30, speed: 150, restMs: 130 },
        { by: -110, speed: 300, restMs: 200 },
      ],
      { restMs: 130 },
    );
    frames = [...filmed(ordinaryFilm({ ...SMALL, motion, chance: seeded(1) }))];
  }, TIMEOUT_MS);

  test("is followed to 0.1 at rest and 0.5 in motion", () => {
    const follower = new OrdinaryFollower(reference);
    const seen = frames.map(({ picture, at, truth }) => ({ truth, reading: follower.follow(picture, at) }));
    expect(seen.filter(({ reading }) => reading.sight === "sure").length).toBeGreaterThan(0.9 * seen.length);
    for (const { truth, reading } of seen) {
      expect(reading.turnsInDoubt).toBe(false);
      if (reading.sight !== "sure") continue;
      const off = Math.abs((reading.position ?? Number.NaN) - truth.position);
      expect(off).toBeLessThan(Math.abs(truth.speed) < 2 ? 0.1 : 0.5);
    }
    expect(seen.at(-1)?.reading.isStopped).toBe(true);
  });

  test("is never read off a picture that does not show it, and no turn is made up", () => {
    const follower = new OrdinaryFollower(reference);
    const { picture } = frames[0] as FilmFrame;
    follower.follow(picture, 0);
    expect(follower.follow(picture, 33).position).toBeCloseTo(0, 1);
    const kinds = Object.entries(STRANGE);
    for (let k = 2; k <= 60; k++) {
      const [kind, paint] = kinds[k % kinds.length] as (typeof kinds)[number];
      const { sight } = follower.follow({ width, height, data: paint() }, 33 * k);
      expect(sight, kind).not.toBe("sure");
    }
    const back = follower.follow(picture, 33 * 61);
    expect(Math.round((back.position ?? 0) / 100) === 0 || back.turnsInDoubt).toBe(true);
    expect(back.turnsInDoubt).toBe(true);
  });

  test("is sure of a place that it has no past for only when the next picture agrees", () => {
    const [first, second, far] = [frames[0], frames[1], frames.find(({ truth }) => truth.position > 29)];
    const sights = (pictures: readonly (FilmFrame | undefined)[]) => {
      const follower = new OrdinaryFollower(reference);
      return pictures.map((frame, k) => follower.follow((frame as FilmFrame).picture, 33 * k).sight);
    };
    expect(sights([first, second])).toEqual(["not-sure", "sure"]);
    // Nobody turns it so far in 33 ms.
    expect(sights([first, far])).toEqual(["not-sure", "not-sure"]);
  });

  test.each([
    { lost: "one in six pictures", isLost: (k: number) => k % 6 === 3 },
    { lost: "two of four pictures, one by one", isLost: (k: number) => k === 22 || k === 24 },
  ])("is followed at 15 frames a second with $lost lost, and its turns are counted", ({ isLost }) => {
    const motion = motionOf([{ by: -90, speed: 60, restMs: 400 }], { restMs: 300 });
    const slow = [...filmed(ordinaryFilm({ ...SMALL, motion, framesPerSecond: 15, chance: seeded(1) }))];
    const follower = new OrdinaryFollower(reference);
    const seen = slow
      .filter((_, k) => !isLost(k))
      .map(({ picture, at, truth }) => ({ truth, reading: follower.follow(picture, at) }));
    for (const { truth, reading } of seen.slice(2)) {
      expect(reading).toMatchObject({ sight: "sure", turnsInDoubt: false });
      expect(Math.abs((reading.position ?? Number.NaN) - truth.position)).toBeLessThan(0.1);
    }
  });

  test("tells that its turns are in doubt after it was out of sight while it turned, until its place is said", () => {
    const follower = new OrdinaryFollower(reference);
    const moving = frames.findIndex(({ truth }) => truth.speed < -250);
    for (const { picture, at } of frames.slice(0, moving)) follower.follow(picture, at);
    const later = frames.at(-1) as FilmFrame;
    expect(follower.follow(later.picture, later.at + 400).turnsInDoubt).toBe(true);
    follower.setPosition(20);
    const next = follower.follow(later.picture, later.at + 433);
    expect(next.turnsInDoubt).toBe(false);
    expect(next.position).toBeCloseTo(20, 0);
  });
});

test(
  "a dial whose marks are too faint for the noise of one picture is learned from all of them",
  () => {
    const { width, height, focal } = { width: 152, height: 134, focal: 190 };
    const film: typeof SMALL = {
      camera: { width, height, focal, tilt: 15, tiltFrom: 208, roll: -4, k1: -0.08 },
      radius: 48,
      look: PAPER_DIAL,
      fingers: GRIPS.fromBelow,
      light: { slopeX: -0.2, strength: () => 0.8 },
      sensor: { moments: 1, exposureMs: 6, readNoise: 1.2, shotNoise: 4 },
    };
    const found = setUpByFilm({ ...film, chance: seeded(2) }, MISSES, 6);
    if ("code" in found) throw new Error(JSON.stringify(found));
    const motion = motionOf([], { restMs: 200 });
    const frames = filmed(ordinaryFilm({ ...film, motion, handFrom: 1e9, chance: seeded(2) }));
    const follower = new OrdinaryFollower(found);
    const last = [...frames].map(({ picture, at }) => follower.follow(picture, at)).at(-1);
    // Its place is known, but not exactly enough.
    expect(last).toMatchObject({ sight: "not-sure", reason: "ambiguous", turnsInDoubt: false });
    expect(last?.position).toBeCloseTo(0, 0);
  },
  TIMEOUT_MS,
);

test(
  "a dial without numerals is refused",
  () => {
    const look = { numbered: 0, graduations: 60 };
    const found = setUpByFilm({ ...SMALL, look, chance: seeded(1) }, MISSES, TURN_s);
    expect(found).toMatchObject({ code: "no-numerals" });
  },
  TIMEOUT_MS,
);
