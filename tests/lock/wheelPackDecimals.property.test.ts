import fc from "fast-check";
import { expect, test } from "vitest";
import { idealMotion } from "../../src/dialing/idealMotion";
import type { WheelPackProfile } from "../../src/lock/profile";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { WheelPack } from "../../src/lock/wheelPack";

const tenths = (from: number, to: number) => fc.integer({ min: from * 10, max: to * 10 }).map((n) => n / 10);

function packed(): WheelPackProfile {
  const profile = shippedProfile("three-wheel");
  if (profile.kind !== "wheel-pack") throw new TypeError("not a wheel pack");
  return profile;
}

test("a draw of any length, begun anywhere, ends at the stop with the bolt all the way back", () => {
  fc.assert(
    fc.property(
      tenths(0, 30),
      tenths(3, 40),
      fc.double({ min: 0, max: 100, noNaN: true }),
      (engageAt, travel, start) => {
        const draw = { turn: "right", engageAt, travel, positiveStop: true } as const;
        const profile: WheelPackProfile = { ...packed(), draw };
        const combination = [38, 71, 56];
        const pack = new WheelPack(profile, combination, { dial: start, slack: [0, 0, 0], engagedAt: null });
        const [, ...stops] = idealMotion(profile, combination, start, [], 5);
        for (const stop of stops) pack.turnBy(stop - pack.dial);
        expect(pack.retraction).toBe(1);
      },
    ),
  );
});
