import { describe, expect, test } from "vitest";
import { Attempt } from "../../src/dialing/attempt";
import type { Graduations } from "../../src/lock/dial";
import { LockError } from "../../src/lock/lockError";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { COMBINATION } from "../support/faultTraces";
import { handled } from "../support/handled";

type Id = "three-wheel" | "dial-encoder";
const namesOf = (id: Id, hand: readonly Graduations[]) =>
  handled(shippedProfile(id), COMBINATION, { hand }).facts.map(({ type }) => type);

const DIALED = [
  "run.begun",
  "number.reached",
  "turn.reversed",
  "number.reached",
  "turn.reversed",
  "number.reached",
  "turn.reversed",
];

describe.each(["three-wheel", "dial-encoder"] as const)("what a hand makes happen at the %s lock", (id) => {
  const stop = id === "three-wheel" ? 190 : 211;

  test("from the first turn until it is secured, each fact once and in order", () => {
    const facts = namesOf(id, [0, 338, 71, 226, stop, stop + 20, stop + 220, stop + 620, stop + 700]);
    expect(facts).toEqual([...DIALED, "bolt.retracted", "bolt.thrown", "lock.cleared"]);
  });

  test("in one move from the stop through throwing the bolt to securing", () => {
    expect(namesOf(id, [0, 338, 71, 226, stop, stop + 620]).slice(DIALED.length)).toEqual([
      "bolt.retracted",
      "bolt.thrown",
      "lock.cleared",
    ]);
  });

  test("a draw in vain is refused once, however far it is turned and however often", () => {
    const facts = namesOf(id, [0, 338, 66, 226, 150, 100, 160, 90]);
    expect(facts.filter((type) => type === "draw.refused")).toHaveLength(1);
  });

  test("each fresh start has a draw of its own to refuse", () => {
    const facts = namesOf(id, [0, 338, 66, 226, 150, 538, 266, 426, 350]);
    expect(facts.filter((type) => type === "draw.refused")).toHaveLength(2);
    expect(facts).toContain("fresh.started");
  });
});

test("a wheel pack that was not spun off opens again, and is to be secured again", () => {
  const facts = namesOf("three-wheel", [0, 338, 71, 226, 190, 210, 180, 200, 610]);
  expect(facts.slice(DIALED.length)).toEqual([
    "bolt.retracted",
    "bolt.thrown",
    "bolt.retracted",
    "bolt.thrown",
    "lock.cleared",
  ]);
});

describe("an attempt that cannot be", () => {
  test.each([
    { why: "a combination too short", id: "three-wheel", combination: [1, 2], dial: 0, code: "number-count" },
    { why: "a dial too far off, with wheels", id: "three-wheel", combination: COMBINATION, dial: 2e9, code: "too-far" },
    { why: "a dial too far off, without", id: "dial-encoder", combination: COMBINATION, dial: -2e9, code: "too-far" },
    { why: "a dial nowhere", id: "dial-encoder", combination: COMBINATION, dial: Number.NaN, code: "too-far" },
  ] as const)("$why: $code", ({ id, combination, dial, code }) => {
    const begin = () => new Attempt(shippedProfile(id), combination, { dial });
    expect(begin).toThrow(LockError);
    expect(begin).toThrow(expect.objectContaining({ code }));
  });

  test.each(["three-wheel", "dial-encoder"] as const)("a move off the end of the world, at the %s lock", (id) => {
    const attempt = new Attempt(shippedProfile(id), COMBINATION, { dial: 0 });
    expect(() => attempt.turnBy(2e9)).toThrow(LockError);
    expect(attempt.dial).toBe(0);
  });
});

test("a draw that is turned back in, and then left for the last number again, leaves both turnbacks with that number", () => {
  const { attempt } = handled(shippedProfile("three-wheel"), [38, 71, 26], {
    hand: [0, 338, 71, 226, 214, 219, 211, 227],
  });
  expect(attempt.reader.legs).toHaveLength(3);
  expect(attempt.reader.legs[2]?.turnbacks).toEqual([15, 5]);
});
