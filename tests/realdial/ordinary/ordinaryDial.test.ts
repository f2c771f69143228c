import { expect, test } from "vitest";
import { OrdinaryDial, type OrdinarySeen } from "../../../src/realdial/ordinary/ordinaryDial";
import { filmed } from "../../support/film/film";
import { placesToTap, smallOrdinaryFilm } from "../../support/film/ordinaryScene";

const SLOW = { by: 104, speed: 40, restMs: 200 };

/** Taps in pixels. */
function tapsFor(shooting: ReturnType<typeof smallOrdinaryFilm>) {
  const { middle, index } = placesToTap(shooting);
  const { width, height } = shooting.scene.camera;
  const tap = ({ x, y }: typeof middle) => ({ x: x * width - 0.5, y: y * height - 0.5 });
  return { middle: tap(middle), index: tap(index) };
}

test("from two taps by a slow turn to a dial that is followed, in hundredths of a turn from its 0", {
  timeout: 240_000,
}, () => {
  const shooting = smallOrdinaryFilm([SLOW, { by: -44, speed: 60, restMs: 400 }], 300);
  const dial = new OrdinaryDial();
  let isFound = false;
  const seen: { readonly seen: OrdinarySeen; readonly truth: number }[] = [];
  for (const { picture, at, truth } of filmed(shooting)) {
    if (isFound) seen.push({ seen: dial.take(picture, at), truth: truth.position });
    else {
      expect(dial.take(picture, at)).toEqual({ step: "untapped", problem: null });
      expect(dial.find(picture, tapsFor(shooting), 100)).toMatchObject({ step: "turning", part: 0, hint: null });
      isFound = true;
    }
  }
  const steps = seen.map((one) => one.seen.step);
  expect(steps.indexOf("followed")).toBeGreaterThan(steps.lastIndexOf("turning"));
  const parts = seen.flatMap((one) => (one.seen.step === "turning" ? [one.seen.part] : []));
  expect(parts).toEqual(parts.toSorted((a, b) => a - b));
  expect(parts.at(-1)).toBe(1);
  const offs = seen.flatMap(({ seen: one, truth }) =>
    one.step === "followed" && one.sighting.position !== null ? [one.sighting.position - truth] : [],
  );
  expect(offs.length).toBeGreaterThan(20);
  // Whole turns are any at the beginning.
  for (const off of offs) expect(Math.abs(off - 100 * Math.round(off / 100))).toBeLessThan(0.5);
  dial.settle();
  const last = filmed(shooting).next().value;
  expect(last).toBeDefined();
});

test("taps that miss the dial come back with what is wrong, and so does a dial of another count", {
  timeout: 120_000,
}, () => {
  const shooting = smallOrdinaryFilm([], 100);
  const first = filmed(shooting).next().value;
  if (first === undefined) throw new Error("no film");
  const dial = new OrdinaryDial();
  const tiny = { middle: { x: 160, y: 120 }, index: { x: 160, y: 110 } };
  expect(dial.find(first.picture, tiny, 100)).toMatchObject({ step: "untapped", problem: { code: "too-small" } });
  const other = dial.find(first.picture, tapsFor(shooting), 60);
  expect(other).toMatchObject({
    step: "untapped",
    problem: { code: expect.stringMatching(/^(wrong-count|no-marks)$/) },
  });
});
