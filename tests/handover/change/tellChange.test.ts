import { describe, expect, test } from "vitest";
import { EncoderChange } from "../../../src/handover/change/encoderChange";
import { opensTo } from "../../../src/handover/change/opensTo";
import { PackChange } from "../../../src/handover/change/packChange";
import { tellChange } from "../../../src/handover/change/tellChange";
import type { Combination } from "../../../src/lock/combination";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { dialTo, KEYED, openBy } from "./changeHands";

const PRESENT = [38, 71, 26];
const WANTED = [52, 17, 45];

function threeWheel() {
  const profile = KEYED.find(({ id }) => id === "three-wheel");
  if (profile === undefined) throw new TypeError("no three-wheel pack is shipped");
  return profile;
}

const profile = threeWheel();
const { index } = profile.changing;

/** A change by key; the new one dialed with stop errors, or to another index, or by a motion of one's own. */
function changed(dialNew: (change: PackChange) => void): PackChange {
  const change = new PackChange(profile, PRESENT, WANTED);
  dialTo(change, profile, PRESENT, index);
  change.act("insertKey");
  change.act("turnKey");
  dialNew(change);
  change.act("turnKeyBack");
  change.act("withdrawKey");
  return change;
}

const missing = (errors: readonly number[]) => changed((change) => dialTo(change, profile, WANTED, index, errors));
const told = (change: PackChange | EncoderChange) =>
  tellChange(change).map(({ code, number, size }) => [code, number, Number(size.toFixed(3))]);

describe("what went wrong in a change with a key", () => {
  test("nothing, in a clean one: three proofs, then the door", () => {
    const change = missing([]);
    for (let k = 0; k < 3; k++) {
      openBy(change, profile, WANTED);
      change.turnBy(150);
    }
    expect([change.proofs, change.state]).toEqual([3, "proved"]);
    change.act("shutDoor");
    expect(told(change)).toEqual([]);
  });

  test("a number set off: the lock opens there, with less to spare, or only there", () => {
    const [near] = tellChange(missing([0, 0, 0.8]));
    expect([near?.code, near?.number, near?.size]).toEqual(["number-set-off", 3, expect.closeTo(0.8, 9)]);
    expect(near?.happened).toBe("Your third number, 45, was set 0.8 graduations off.");
    expect(near?.did).toBe(
      "The lock opens at 45.8. Dialed exactly at 45 it opens as well, with 0.4 graduations to spare on that side.",
    );
    const [far] = tellChange(missing([0, 2, 0]));
    expect(far?.did).toBe("The lock opens at 15. Dialed at 17 it stays shut.");
  });

  test("the opening index taken for the changing index is one fault, not three", () => {
    const change = changed((one) => dialTo(one, profile, WANTED, 0));
    expect(told(change)).toEqual([["wrong-index", 0, 10]]);
    expect(change.setCombination).toEqual([42, 7, 35]);
  });

  test("too few turns to the first number set whatever its wheel stood at", () => {
    const change = changed((one) => {
      const at = (number: number) => one.turnBy(number + index - one.dial);
      // One arrival where four are asked: the first wheel is not even met.
      at(52);
      at(17 - 300);
      at(45 - 100);
    });
    expect(told(change)[0]?.slice(0, 2)).toEqual(["number-set-off", 1]);
    const set = change.setCombination ?? [];
    expect([opensTo(profile, set, set), opensTo(profile, set, WANTED)]).toEqual([true, false]);
  });

  test("a key turned with a wheel away from the port, and the door shut on it", () => {
    const change = new PackChange(profile, PRESENT, WANTED);
    dialTo(change, profile, PRESENT, index, [0, -2.5, 0]);
    change.act("insertKey");
    change.act("turnKey");
    expect(told(change)).toEqual([["key-turned-unaligned", 2, 2.5]]);
    expect(change.act("shutDoor")).toEqual({ facts: [], refusal: "key-in-door" });
    change.act("turnKeyBack");
    change.act("withdrawKey");
    change.act("shutDoor");
    expect(told(change).at(-1)).toEqual(["locked-out", 0, 0]);
  });

  test("the present combination dialed to the opening index", () => {
    const change = new PackChange(profile, PRESENT, WANTED);
    dialTo(change, profile, PRESENT, 0);
    change.act("insertKey");
    change.act("turnKey");
    expect(tellChange(change).map(({ code, numbers }) => [code, numbers])).toEqual([
      ["present-at-opening-index", undefined],
      ["key-turned-unaligned", [1, 2, 3]],
    ]);
  });

  test("a door shut before the proofs is a fault, and a lock-out where the combination does not open", () => {
    const good = missing([]);
    good.act("shutDoor");
    expect(told(good)).toEqual([["door-shut-unproved", 0, 0]]);
    const bad = missing([0, 2, 0]);
    bad.act("shutDoor");
    expect(told(bad).map(([code]) => code)).toEqual(["number-set-off", "door-shut-unproved", "locked-out"]);
  });

  test("an opening that was not dialed for proves nothing", () => {
    const change = missing([]);
    openBy(change, profile, WANTED);
    // The bolt thrown and drawn again, the wheels not spun off.
    change.turnBy(30);
    change.turnBy(-60);
    expect([change.retraction, change.proofs]).toEqual([1, 1]);
  });
});

describe("what went wrong in a change on the dial", () => {
  const encoder = shippedProfile("dial-encoder");
  if (encoder.kind !== "dial-encoder") throw new TypeError("not an encoder lock");
  const present = [43, 16, 58];
  const dial = (change: EncoderChange, numbers: Combination) => {
    change.turnBy(50);
    change.turnBy(-40);
    openBy(change, encoder, numbers);
  };

  test("a wrong try, two dialings that differ, a number taken wrong twice, and the door", () => {
    const change = new EncoderChange(encoder, present, WANTED, { dial: 0 });
    dial(change, [43, 20, 58]);
    dial(change, present);
    change.act("pressButton");
    dial(change, WANTED);
    dial(change, [52, 17, 49]);
    expect(told(change)).toEqual([
      ["present-refused", 0, 1],
      ["entries-differ", 3, 4],
    ]);
    dial(change, [52, 20, 45]);
    dial(change, [52, 20, 45]);
    dial(change, WANTED);
    expect([change.proofs, change.proof?.refused]).toEqual([0, 1]);
    dial(change, [52, 20, 45]);
    expect(change.proofs).toBe(1);
    change.act("shutDoor");
    expect(told(change)).toEqual([
      ["present-refused", 0, 1],
      ["number-set-off", 2, 3],
      ["door-shut-unproved", 0, 1],
      ["locked-out", 0, 0],
    ]);
  });
});
