import { expect, test } from "vitest";
import { alignRing, doorZeroing, readSide } from "../../../../../../src/app/exercises/handover/run/session/doorZeroing";
import { shippedProfile } from "../../../../../../src/lock/shippedProfiles";

test("a simulated hand zeroes one side after the other, whatever the trainee's clock says", () => {
  const session = doorZeroing(shippedProfile("dial-encoder"), 5, undefined);
  alignRing(session);
  session.turnBy(3, 900_000);
  readSide(session);
  readSide(session);
  expect(session.state).toBe("zeroSet");
});
