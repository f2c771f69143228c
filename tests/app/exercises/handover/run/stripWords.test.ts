import { expect, test } from "vitest";
import { HandoverSession } from "../../../../../src/app/exercises/handover/run/session/handoverSession";
import { stripWords } from "../../../../../src/app/exercises/handover/run/stripWords";
import { shippedProfile } from "../../../../../src/lock/shippedProfiles";

const { situation } = new HandoverSession({ profile: shippedProfile("two-wheel"), seed: 1, isHandsOff: true }).run;

test("a fresh door in two lines", () => {
  expect(stripWords(situation, "")).toEqual(["Door open · bolt thrown", "nobody inside · proved 0 of 3"]);
});

test("the longest words still fit a phone's line, and a danger comes first in its own", () => {
  const worst = {
    ...situation,
    door: "shut",
    bolt: "spunOff",
    holdback: "on",
    inside: "unable",
    proofs: "thrice",
  } as const;
  const [lock, rest] = stripWords(worst, "shut inside");
  expect(lock).toBe("Door shut · bolt thrown, spun off · held back");
  expect(rest).toBe("shut inside · 1 inside, cannot open · proved 3 of 3");
});
