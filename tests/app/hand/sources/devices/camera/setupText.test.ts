import { describe, expect, test } from "vitest";
import { grayOf } from "../../../../../../src/app/hand/sources/devices/camera/grayFrames";
import { noiseText, positionText, rateText } from "../../../../../../src/app/hand/sources/devices/camera/setupText";
import { sightHint, sightProblem } from "../../../../../../src/app/hand/sources/devices/camera/sightProblem";
import { deviceText } from "../../../../../../src/app/hand/sources/devices/deviceWords";

describe("words of the camera's setup", () => {
  test.each([
    [25, 100, false, "25.0"],
    [25, 60, false, "15.0"],
    [-0.04, 100, false, "0.0"],
    [-1, 60, false, "59.4"],
    [25, 100, true, "75.0"],
    [0.04, 100, true, "0.0"],
  ])("seen at %f of 100, a dial of %i, whose numbers go down by the left: %s, shows %s", (...row) => {
    const [position, perTurn, isReversed, shown] = row;
    const sighting = { position, shown: null, at: 0, sight: "sure", reason: "none", turnsInDoubt: false } as const;
    expect(positionText(sighting, perTurn, isReversed)).toBe(`Your dial shows: ${shown}.`);
    expect(positionText(null, perTurn, isReversed)).toBe("Your dial shows: not seen.");
  });

  test("noise is in the graduations of the dial", () => {
    expect(noiseText({ position: 3, noise: 0.1 }, 60)).toBe("Noise at rest: 0.06 graduations.");
    expect(noiseText({ position: 3, noise: 0.004 }, 100)).toBe("Noise at rest: under 0.01 graduations.");
    expect(noiseText(null, 60)).toContain("leave the dial alone");
  });

  test("the frame rate comes with what a frame costs", () => {
    expect(rateText(29.7, 6.2)).toBe("Frame rate: 30 frames a second, each read in 6 ms.");
  });

  test("a covered corner is named", () => {
    const markers = [true, true, true, false].map((isSeen) => ({ corners: [], isSeen }));
    expect(deviceText(sightProblem("markers-covered", { markers, rings: [] }))).toBe(
      "I lost sight of your dial: the sheet's lower left corner is covered. Uncover it.",
    );
    expect(deviceText(sightProblem("too-dark", null))).toBe(
      "I lost sight of your dial: the picture is too dark. Bring light.",
    );
  });

  test("a corner that is covered while the dial is seen is named, and nothing where all are seen", () => {
    const seen = (...are: readonly boolean[]) => ({
      markers: are.map((isSeen) => ({ corners: [], isSeen })),
      rings: [],
    });
    const hint = sightHint(seen(true, false, true, true));
    expect(hint && deviceText(hint)).toBe("The sheet's upper right corner is covered.");
    expect(sightHint(seen(true, true, true, true))).toBeNull();
    expect(sightHint(null)).toBeNull();
  });
});

test("colors are as bright as an eye finds them", () => {
  const colors = [255, 255, 255, 255, 0, 255, 0, 255, 0, 0, 255, 255];
  expect([...grayOf({ width: 3, height: 1, data: Uint8ClampedArray.from(colors) }).data]).toEqual([255, 149, 28]);
});
