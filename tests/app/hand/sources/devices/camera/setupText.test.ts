import { describe, expect, test } from "vitest";
import { grayOf } from "../../../../../../src/app/hand/sources/devices/camera/grayFrames";
import { checkText, rateText } from "../../../../../../src/app/hand/sources/devices/camera/setupText";
import { sightProblem } from "../../../../../../src/app/hand/sources/devices/camera/sightProblem";
import { deviceText } from "../../../../../../src/app/hand/sources/devices/deviceWords";

const at = (position: number) => checkText({ position, noise: 0 });

describe("words of the camera's setup", () => {
  test("the check asks for 25, and says how far off it is there", () => {
    expect(checkText(null)).toBe("Check: turn your dial to 25, and stop.");
    expect(at(40)).toBe("Check: turn your dial to 25, and stop.");
    expect(at(-74.96)).toBe("Check: at 25, the camera agrees.");
    expect(at(125.3)).toBe("Check: the camera reads 0.3 graduations left of 25.");
    expect(at(24.4)).toBe("Check: the camera reads 0.6 graduations right of 25.");
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
});

test("colors are as bright as an eye finds them", () => {
  const colors = [255, 255, 255, 255, 0, 255, 0, 255, 0, 0, 255, 255];
  expect([...grayOf({ width: 3, height: 1, data: Uint8ClampedArray.from(colors) }).data]).toEqual([255, 149, 28]);
});
