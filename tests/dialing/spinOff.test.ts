import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { adviceFor } from "../../src/dialing/advice";
import { Attempt } from "../../src/dialing/attempt";
import { idealMotion } from "../../src/dialing/idealMotion";
import type { Profile } from "../../src/lock/profile";
import { SHIPPED_PROFILES, shippedProfile } from "../../src/lock/shippedProfiles";
import { spinOffRule } from "../../src/lock/spinOffRule";

/** A lock that has been dialed open: its dial stands at the positive stop. */
function opened(profile: Profile, combination = profile.asSet ?? []): Attempt {
  const [start = 0, ...stops] = idealMotion(profile, combination, 0, [], 2);
  const attempt = new Attempt(profile, combination, { dial: start });
  for (const stop of stops) attempt.turnBy(stop - attempt.dial);
  expect(attempt.opened).toBe(true);
  return attempt;
}

const away = ({ draw }: Profile) => (draw.turn === "right" ? 1 : -1);

describe("how many turns secure a lock", () => {
  test.each([
    { id: "two-wheel", turns: 4, source: "item e.8" },
    { id: "three-wheel", turns: 4, source: "item e.8" },
    { id: "four-wheel", turns: 5, source: "common practice, no source" },
    { id: "dial-encoder", turns: 1, source: "common practice, no source" },
  ])("$id: $turns", ({ id, turns, source }) => {
    const rule = spinOffRule(shippedProfile(id));
    expect(rule.turns).toBe(turns);
    expect(rule.source).toContain(source);
  });

  test("the two-wheel lock is not secured after three turns and is after four", () => {
    const profile = shippedProfile("two-wheel");
    const attempt = opened(profile);
    expect(attempt.turnBy(399).map(({ type }) => type)).not.toContain("lock.cleared");
    expect(adviceFor(attempt, "thrown", "full")?.say).toBe(
      "Not secure yet. Spin off: keep turning left, 0.1 turns to go.",
    );
    expect(attempt.turnBy(1).map(({ type }) => type)).toContain("lock.cleared");
  });
});

describe("a spin-off counts its turns down and names the wheels that stand", () => {
  test("nothing before the bolt is thrown", () => {
    const attempt = opened(shippedProfile("three-wheel"));
    expect(attempt.spinOff).toBeNull();
    attempt.turnBy(5);
    expect(attempt.spinOff).toBeNull();
  });

  // Dialed 38-71-26 from 0 the stops are 338, 71, 226 and 190, and the wheels then stand at 338, 271 and 226: turning
  // left from 190 they go after 148, 81 and 36 graduations, and leave their gates 1.25 later.
  test.each([
    { turned: 20, turnsLeft: 3.8, wheelsStanding: [1, 2, 3] },
    { turned: 37, turnsLeft: 3.63, wheelsStanding: [1, 2, 3] },
    { turned: 38, turnsLeft: 3.62, wheelsStanding: [1, 2] },
    { turned: 82, turnsLeft: 3.18, wheelsStanding: [1, 2] },
    { turned: 83, turnsLeft: 3.17, wheelsStanding: [1] },
    { turned: 149, turnsLeft: 2.51, wheelsStanding: [1] },
    { turned: 150, turnsLeft: 2.5, wheelsStanding: [] },
    { turned: 248, turnsLeft: 1.52, wheelsStanding: [] },
    { turned: 400, turnsLeft: 0, wheelsStanding: [] },
    { turned: 450, turnsLeft: 0, wheelsStanding: [] },
  ])("after $turned graduations $turnsLeft turns are left", ({ turned, turnsLeft, wheelsStanding }) => {
    const attempt = opened(shippedProfile("three-wheel"), [38, 71, 26]);
    attempt.turnBy(turned);
    expect(attempt.spinOff).toMatchObject({ turn: "left", wheelsStanding });
    expect(attempt.spinOff?.turnsLeft).toBeCloseTo(turnsLeft, 9);
  });

  test("turning back begins the count again", () => {
    const attempt = opened(shippedProfile("three-wheel"));
    attempt.turnBy(220);
    attempt.turnBy(-30);
    expect(attempt.spinOff).toMatchObject({ turn: "right", turnsLeft: 3.7, turnsMade: 0.3 });
  });

  test("an encoder lock asks for one turn and has no wheels to name", () => {
    const attempt = opened(shippedProfile("dial-encoder"));
    attempt.turnBy(60);
    expect(attempt.spinOff).toMatchObject({ turnsWanted: 1, turnsLeft: 0.4, wheelsStanding: [] });
    expect(adviceFor(attempt, "thrown", "full")?.say).toBe("The bolt is thrown. Keep turning left: 0.4 turns to go.");
  });

  test("the advice says how far it is and which wheels still stand", () => {
    const attempt = opened(shippedProfile("three-wheel"), [38, 71, 26]);
    attempt.turnBy(60);
    const advice = adviceFor(attempt, "thrown", "full");
    expect(advice?.say).toBe("Not secure yet. Spin off: keep turning left, 3.4 turns to go.");
    expect(advice?.detail).toBe("wheels 1 and 2 are still at their numbers");
  });
});

test.each(SHIPPED_PROFILES.map((profile) => [profile.id, profile] as const))(
  "once the %s lock is secured no wheel stands, whatever was turned before",
  (_, profile) => {
    const wobbles = fc.array(fc.integer({ min: -120, max: 120 }), { maxLength: 4 });
    fc.assert(
      fc.property(wobbles, (moves) => {
        const attempt = opened(profile);
        attempt.turnBy(away(profile) * (profile.draw.travel + 1));
        for (const by of moves) attempt.turnBy(by);
        if (!attempt.isThrown) return;
        attempt.turnBy(away(profile) * spinOffRule(profile).turns * profile.graduations);
        expect(attempt.isSecured).toBe(true);
        expect(attempt.spinOff?.turnsLeft).toBe(0);
        // One that turns with the dial may just come by its number; then it goes on with it.
        const there = attempt.spinOff?.wheelsStanding ?? [];
        attempt.turnBy(3 * away(profile));
        expect(attempt.spinOff?.wheelsStanding.filter((wheel) => there.includes(wheel))).toEqual([]);
      }),
      { examples: [[[8, 7, -93, -82]]] },
    );
  },
);
