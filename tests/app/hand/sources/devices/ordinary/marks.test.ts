import { afterEach, expect, test, vi } from "vitest";
import {
  keepMarks,
  type Marks,
  movedByKey,
  nearestMark,
  rememberedMarks,
  tapsOf,
  withMark,
} from "../../../../../../src/app/hand/sources/devices/ordinary/marks";

const MARKS: Marks = { middle: { x: 0.5, y: 0.5 }, index: { x: 0.5, y: 0.2 } };

/** A page's storage with these texts in it. */
function stubStorage(texts: Record<string, string>) {
  const stored = new Map(Object.entries(texts));
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => stored.get(key) ?? null,
    setItem: (key: string, text: string) => stored.set(key, text),
    removeItem: (key: string) => stored.delete(key),
  });
  return stored;
}

afterEach(() => vi.unstubAllGlobals());

test.each([
  ["ArrowLeft", false, { x: 0.495, y: 0.2 }],
  ["ArrowRight", true, { x: 0.55, y: 0.2 }],
  ["ArrowUp", false, { x: 0.5, y: 0.195 }],
  ["ArrowDown", true, { x: 0.5, y: 0.25 }],
])("%s moves a mark alone (with Shift: %s)", (key, isLarge, place) => {
  const moved = movedByKey(MARKS, "index", key, isLarge);
  expect(moved?.middle).toEqual(MARKS.middle);
  expect(moved?.index.x).toBeCloseTo(place.x, 9);
  expect(moved?.index.y).toBeCloseTo(place.y, 9);
});

test("another key moves nothing, and no mark leaves the picture", () => {
  expect(movedByKey(MARKS, "middle", "Tab", false)).toBeNull();
  expect(withMark(MARKS, "middle", -0.3, 1.4).middle).toEqual({ x: 0, y: 1 });
});

test.each([
  [0.5, 0.45, "middle"],
  [0.5, 0.25, "index"],
  [0.9, 0.3, "index"],
] as const)("a tap at %f, %f takes the nearest mark: %s", (x, y, name) => {
  expect(nearestMark(MARKS, x, y, 4 / 3)).toBe(name);
});

test("which mark is nearest is measured on the picture, whatever its shape", () => {
  const marks = { ...MARKS, index: { x: 0.8, y: 0.2 } };
  expect([nearestMark(marks, 0.7, 0.45, 1), nearestMark(marks, 0.7, 0.45, 16 / 9)]).toEqual(["middle", "index"]);
});

test("marks are taps in pixels, counted from the middle of the first", () => {
  expect(tapsOf(MARKS, { width: 640, height: 480 })).toEqual({
    middle: { x: 319.5, y: 239.5 },
    index: { x: 319.5, y: 95.5 },
  });
});

test("each camera has its marks, and nothing else is stored of it", () => {
  const stored = stubStorage({});
  keepMarks("one", MARKS);
  expect(rememberedMarks("one")).toEqual(MARKS);
  expect(rememberedMarks("other")).toBeNull();
  expect([...stored]).toEqual([["dial-marks-one", JSON.stringify(MARKS)]]);
});

test.each(["{", "null", '{"middle":{"x":2,"y":0},"index":{"x":0,"y":0}}', "[]"])(
  "what was stored and is no marks begins anew: %s",
  (text) => {
    stubStorage({ "dial-marks-one": text });
    expect(rememberedMarks("one")).toBeNull();
  },
);
