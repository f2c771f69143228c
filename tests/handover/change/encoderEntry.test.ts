import { describe, expect, test } from "vitest";
import { EncoderChange } from "../../../src/handover/change/encoderChange";
import type { Combination } from "../../../src/lock/combination";
import type { DialEncoderProfile } from "../../../src/lock/profile";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { openBy } from "./changeHands";

const PRESENT = [43, 16, 58];
const WANTED = [27, 61, 34];

function encoder(): DialEncoderProfile {
  const profile = shippedProfile("dial-encoder");
  if (profile.kind !== "dial-encoder") throw new TypeError("not an encoder lock");
  return profile;
}

/** A lock whose bolt is back and whose change button is pressed, with what it says from then on. */
function taking() {
  const profile = encoder();
  const change = new EncoderChange(profile, PRESENT, WANTED, { dial: 0 });
  const facts: string[] = [];
  const hand = {
    get dial() {
      return change.dial;
    },
    turnBy: (by: number) =>
      facts.push(
        ...change
          .turnBy(by)
          .map(({ type }) => type)
          .filter((type) => type.startsWith("entr")),
      ),
  };
  openBy(hand, profile, PRESENT);
  facts.length = 0;
  change.act("pressButton");
  return { change, facts, hand, dial: (numbers: Combination) => openBy(hand, profile, numbers) };
}

/** Turns to a number, after so many whole turns more than the shortest way to it. */
function turnTo(hand: ReturnType<typeof taking>["hand"], turn: 1 | -1, number: number, turns: number) {
  const way = (((turn * (number - hand.dial)) % 100) + 100) % 100;
  hand.turnBy(turn * (way + 100 * turns));
}

/** Left to 27, right to 61, left to 34, the last of them round again by two turns more than it asks. */
function roundAgain(hand: ReturnType<typeof taking>["hand"]) {
  turnTo(hand, 1, 27, 4);
  turnTo(hand, -1, 61, 2);
  turnTo(hand, 1, 34, 3);
}

describe("new numbers on the dial of an encoder lock, where the hand goes round again", () => {
  test("a last number with more turns than it asks for is the last number", () => {
    const { change, facts, hand } = taking();
    roundAgain(hand);
    hand.turnBy(-20);
    hand.turnBy(2);
    expect(facts).toEqual(["entry.taken"]);
    expect(change.firstEntry).toEqual(WANTED);
  });

  test("and is taken at once where it says the numbers of the first dialing again", () => {
    const { change, facts, hand, dial } = taking();
    hand.turnBy(50);
    hand.turnBy(-20);
    dial(WANTED);
    roundAgain(hand);
    hand.turnBy(-20);
    expect(facts).toEqual(["entry.taken", "entries.agreed"]);
    expect(change.setCombination).toEqual(WANTED);
  });

  test("a hand that starts over at its third turn enters what it dials from there", () => {
    const { change, facts, hand } = taking();
    turnTo(hand, 1, 30, 4);
    turnTo(hand, -1, 80, 2);
    turnTo(hand, 1, 27, 4);
    turnTo(hand, -1, 61, 2);
    turnTo(hand, 1, 34, 1);
    hand.turnBy(-20);
    expect(facts).toEqual(["entry.taken"]);
    expect(change.firstEntry).toEqual(WANTED);
  });

  test("the turn back that ends such an entry is the first turn of the next one", () => {
    const { change, facts, hand } = taking();
    roundAgain(hand);
    hand.turnBy(-20);
    turnTo(hand, 1, 27, 4);
    turnTo(hand, -1, 61, 2);
    turnTo(hand, 1, 34, 1);
    hand.turnBy(-20);
    expect(facts).toEqual(["entry.taken", "entries.agreed"]);
    expect(change.setCombination).toEqual(WANTED);
  });
});
