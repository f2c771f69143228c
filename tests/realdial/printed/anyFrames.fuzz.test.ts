import { expect, test } from "vitest";
import { tryAnyFrames } from "../../support/film/anyFrames";
import { seeded } from "../../support/seeded";

/** A share of them; `npm run trials -- --only frames` goes on for as long as it is given. */
const FRAMES = 1000;

test("frames of any content: none without a dial is read, and no dial at rest is seen to turn", () => {
  const { readings, wrong } = tryAnyFrames(seeded(20261129), FRAMES);
  expect(wrong).toBeNull();
  expect(readings).toBeGreaterThan(FRAMES / 20);
});
