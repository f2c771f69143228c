import { expect, test } from "vitest";
import { FIRST_FACE } from "../../../src/app/hand/dial/firstFace";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";
import { shippedProfile } from "../../../src/lock/shippedProfiles";

test("the dial in the picture has the face of the first lesson's lock", () => {
  const [station] = SHIPPED_SHEETS[0]?.stations ?? [];
  if (typeof station?.profile !== "string")
    throw new Error("the first lesson takes a lock that does not come with the trainer");
  const { graduations, numbersIncrease } = shippedProfile(station.profile);
  expect(FIRST_FACE).toEqual({ graduations, numbersIncrease });
});
