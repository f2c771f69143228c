import { describe, expect, test } from "vitest";
import { FittingSession } from "../../../../src/app/exercises/fitting/fittingSession";
import { HandOnDial } from "../../../../src/app/exercises/fitting/turn/handOnDial";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { seededChance } from "../../../../src/statistics/chance";

/** A lock whose dial can be screwed in, and a hand on it. */
function atTheDoor() {
  const session = new FittingSession(shippedProfile("three-wheel"), seededChance(3));
  session.act({ type: "body.hung" });
  session.act({ type: "ring.put", offset: { x_mm: 0, y_mm: 0 }, turned: 0 });
  return { session, hand: new HandOnDial(() => session) };
}

describe("a hand on the dial of a lock that is fitted", () => {
  test("screws the dial in by turning right, and what it did until it let go is one act", () => {
    const { session, hand } = atTheDoor();
    const before = session.acts.length;
    for (const by of [-10, -2.5, 1]) hand.turn(by);
    expect(hand.inHand(session).dialIn).toBe(11.5);
    expect(session.assembly.dialIn).toBeNull();
    hand.letGo();
    expect(session.acts.slice(before)).toEqual([{ type: "dial.screwed", by: 11.5 }]);
    expect(session.assembly.dialIn).toBe(11.5);
    hand.letGo();
    expect(session.acts).toHaveLength(before + 1);
  });

  test("gets no farther than the ring or the end of the thread, and turns back from there at once", () => {
    const { session, hand } = atTheDoor();
    hand.turn(-1e5);
    const most = hand.inHand(session).dialIn ?? 0;
    hand.turn(5);
    expect(hand.inHand(session).dialIn).toBeCloseTo(most - 5, 5);
    hand.letGo();
    hand.turn(1e5);
    expect(hand.inHand(session).dialIn).toBeCloseTo(0, 5);
  });

  test("makes the check that goes all round once it has gone round in one direction", () => {
    const { session, hand } = atTheDoor();
    session.act({ type: "dial.screwed", by: session.lock.slotAt + 100 });
    session.act({ type: "key.put" });
    for (let k = 0; k < 6; k++) hand.turn(k % 2 === 0 ? 30 : -30);
    expect(session.log).toEqual([]);
    for (let k = 0; k < 4; k++) hand.turn(-30);
    expect(session.log.map(({ kind }) => kind)).toEqual(["turn-round"]);
    expect(hand.turned).toBe(-120);
    const { acts } = session;
    hand.letGo();
    expect(session.acts).toBe(acts);
  });
});
