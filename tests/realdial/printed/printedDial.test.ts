import { describe, expect, test } from "vitest";
import type { GrayImage } from "../../../src/realdial/image/grayImage";
import { PrintedDial } from "../../../src/realdial/printed/printedDial";
import { seenAt } from "../../support/film/camera";
import { type FilmFrame, filmed } from "../../support/film/film";
import { judged } from "../../support/film/judgedFilm";
import { type PrintedConditions, printedFilm } from "../../support/film/printedFilm";
import { PRINTED_ROWS } from "../../support/film/printedRows";

/** A rest, a run at 2 turns/s, a rest: short, since each picture takes a while to make. */
const SHORT: PrintedConditions = { restMs: 70, legs: [{ by: 31, speed: 200, restMs: 110 }] };
/** There and back: on the way there it is learned how the camera reads its picture. */
const TWICE: PrintedConditions = { ...SHORT, legs: [...(SHORT.legs ?? []), { by: -45, speed: 200, restMs: 70 }] };
const SMALL = { width: 256, height: 192 };

const framesOf = (conditions: PrintedConditions): FilmFrame[] => [...filmed(printedFilm(conditions, 11))];
const still = framesOf({ restMs: 40, legs: [], camera: { ...SMALL, tilt: 20 } })[0] as FilmFrame;
const blank = (level: number): GrayImage => ({ width: 256, height: 192, data: new Uint8Array(256 * 192).fill(level) });

describe.each([
  "hand on, 20 degrees",
  "tilt 35, hand, glare, noise, wobble",
  "dim, exposure 1/30 s, hand",
  "shadow edge, light from one side, hand",
])("%s", (name) => {
  test("is read to 0.1 at rest and 0.5 in motion, in every frame once the camera is known", () => {
    const conditions = PRINTED_ROWS[name] as PrintedConditions;
    const film = printedFilm({ ...conditions, ...TWICE, camera: { ...conditions.camera, ...SMALL } }, 11);
    const dial = new PrintedDial(100);
    const { rest, slow, fast, without, miscounted, doubted } = judged(film, ({ picture, at }) =>
      dial.follow(picture, at),
    );
    expect(rest.largest).toBeLessThan(0.1);
    expect(Math.max(slow.largest, fast.largest)).toBeLessThan(0.5);
    expect(fast.count).toBeGreaterThan(1);
    const { "too-fast": unknown = 0, ...others } = without;
    expect(unknown).toBeLessThanOrEqual(12);
    expect([others, miscounted, doubted]).toEqual([{}, 0, 0]);
  });
});

test("a camera that takes two frames' time for one is not believed before that is known", () => {
  const dial = new PrintedDial(100);
  const film = printedFilm({ ...SHORT, camera: { ...SMALL, tilt: 15 }, handFrom: 300, sensor: { readoutMs: 66 } }, 11);
  const { slow, fast, without } = judged(film, ({ picture, at }) => dial.follow(picture, at));
  expect(without["too-fast"]).toBeGreaterThan(0);
  expect(Math.max(slow.largest, fast.largest)).toBeLessThan(0.5);
});

test("curled paper draws out the rings and is not taken for a wobble", () => {
  const dial = new PrintedDial(100);
  const curled = PRINTED_ROWS["curled disc and sheet, tilt 25"] as PrintedConditions;
  const film = printedFilm({ ...curled, ...SHORT, camera: { ...curled.camera, ...SMALL } }, 11);
  const { rest } = judged(film, ({ picture, at }) => dial.follow(picture, at));
  expect(rest.largest).toBeLessThan(0.05);
});

test("a disc that wobbles by more than can be taken out turns nothing, and says so", () => {
  const dial = new PrintedDial(100);
  const film = printedFilm({ ...SHORT, camera: { ...SMALL, tilt: 15 }, disc: { wobble: 8 } }, 11);
  const { frames, rest, without } = judged(film, ({ picture, at }) => dial.follow(picture, at));
  expect(rest.largest).toBeLessThan(0.1);
  expect(without["disc-wobbles"]).toBeGreaterThan(frames / 3);
});

test("a dial of 60 is read in its own graduations", () => {
  const dial = new PrintedDial(60);
  const [turned] = framesOf({ restMs: 40, legs: [], start: 25, camera: SMALL }) as [FilmFrame];
  expect(dial.follow(turned.picture, 0).position).toBeCloseTo(15, 1);
});

test("what is found lies where it is in the picture", () => {
  const { shown } = new PrintedDial(100).follow(still.picture, 0);
  const { camera } = printedFilm({ camera: { ...SMALL, tilt: 20 } }, 11).scene;
  expect(shown?.markers.map(({ isSeen }) => isSeen)).toEqual([true, true, true, true]);
  const corner = shown?.markers[0]?.corners[0];
  const there = seenAt(camera, [-91, 91, 0]);
  // The renderer's first pixel has its middle at 0.5. White spreads over black by half a pixel where grays have a gamma.
  expect(Math.hypot((corner?.x ?? 0) + 0.5 - there.x, (corner?.y ?? 0) + 0.5 - there.y)).toBeLessThan(0.9);
});

describe("where nothing can be read, nothing is", () => {
  test.each([
    ["a dark room", blank(5), "too-dark"],
    ["a white wall", blank(250), "no-sheet"],
    ["a picture of one pixel", { width: 1, height: 1, data: Uint8Array.of(200) }, "no-sheet"],
    ["no picture at all", { width: 0, height: 0, data: new Uint8Array(0) }, "too-dark"],
  ])("%s", (_, image, reason) => {
    expect(new PrintedDial(100).follow(image, 0)).toMatchObject({ position: null, sight: "no-sight", reason });
  });

  test("markers covered after they were seen", () => {
    const dial = new PrintedDial(100);
    dial.follow(still.picture, 0);
    expect(dial.follow(blank(128), 33)).toMatchObject({ position: null, sight: "no-sight", reason: "markers-covered" });
  });

  test("most of the disc covered", () => {
    const dial = new PrintedDial(100);
    dial.follow(still.picture, 0);
    const data = still.picture.data.slice();
    for (let y = 30; y < 160; y++) data.fill(120, y * 256 + 60, y * 256 + 190);
    const { position, sight } = dial.follow({ ...still.picture, data }, 33);
    expect([position, sight]).toEqual([null, "no-sight"]);
  });
});

describe("after a second without sight", () => {
  const seenAgain = () => {
    const dial = new PrintedDial(100);
    dial.follow(still.picture, 0);
    dial.follow(blank(128), 500);
    return { dial, sighting: dial.follow(still.picture, 1000) };
  };

  test("the reading is there again, and turns are in doubt", () => {
    expect(seenAgain().sighting).toMatchObject({ sight: "sure", turnsInDoubt: true });
  });

  test("they are so until somebody says where the dial is", () => {
    const { dial } = seenAgain();
    expect(dial.follow(still.picture, 1033).turnsInDoubt).toBe(true);
    expect(dial.setTo(240)).toBe(true);
    const { position, turnsInDoubt } = dial.follow(still.picture, 1066);
    expect(turnsInDoubt).toBe(false);
    expect(position).toBeCloseTo(240, 2);
  });

  test("nothing can be set where nothing is seen", () => {
    expect(new PrintedDial(100).setTo(0)).toBe(false);
  });
});
