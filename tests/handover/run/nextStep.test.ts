import fc from "fast-check";
import { expect, test, vi } from "vitest";

vi.setConfig({ testTimeout: 180_000 });

import { HandoverRun } from "../../../src/handover/run/handoverRun";
import { nextStep } from "../../../src/handover/run/nextStep";
import type { HandoverEvent } from "../../../src/handover/run/rules/handoverEvent";
import type { Situation } from "../../../src/handover/run/rules/situation";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { draws } from "../../support/draws";
import { DOOR_TO_FIT, EVENTS, fitted } from "../../support/handoverEvents";

const KINDS = [
  { id: "three-wheel", door: null },
  { id: "dial-encoder", door: null },
  { id: "three-wheel", door: DOOR_TO_FIT },
  { id: "dial-encoder", door: DOOR_TO_FIT },
] as const;

/** Does what is said to come next, as well as it can be done. */
function done(situation: Situation, on: HandoverEvent["type"]): HandoverEvent {
  const { door, bolt, zero, proofs, second, combination, entry } = situation;
  switch (on) {
    case "lock.fitted":
      return fitted(true);
    case "mounting.measured":
      return { type: on, height_in: 44 };
    case "zero.set":
      return { type: on, side: zero === "rightSet" ? "left" : "right" };
    case "combination.dialed": {
      const isSecond = door === "open" && combination === "ownTrue" && proofs === "thrice" && second === "unproved";
      return { type: on, by: isSecond ? "second" : "trainee", opened: combination !== "spoiled" };
    }
    case "combination.changed":
      return { type: on, outcome: "true", isAllowed: true };
    case "observer.entered":
      return { type: on, canOpen: true };
    case "wayOut.checked":
      return { type: on, isFree: true };
    case "door.opened":
      if (bolt === "retracted") return { type: on, by: "outside" };
      return { type: on, by: entry === "lockedOut" ? "emergency" : "inside" };
    default:
      return { type: on } as HandoverEvent;
  }
}

test.each(KINDS)("$id, $door: whoever follows what is said comes to a signed door without a fault", ({ id, door }) => {
  const run = new HandoverRun(shippedProfile(id), door);
  for (let step = 0; step < 40 && !run.isHandedOver; step++) {
    run.take({ ...done(run.situation, nextStep(run.situation).on), at_ms: step });
  }
  expect([run.isHandedOver, run.steps.flatMap(({ faults }) => faults)]).toEqual([true, []]);
});

test.each(KINDS)("$id, $door: and from any muddle, unless the lock was changed before it was tried", ({ id, door }) => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...EVENTS), { maxLength: 25 }), (events) => {
      const run = new HandoverRun(shippedProfile(id), door);
      events.forEach((event, at_ms) => {
        if (!run.isHandedOver && run.hindrance(event) === undefined) run.take({ ...event, at_ms });
      });
      for (let step = 0; step < 60 && !run.isHandedOver; step++) {
        const next = nextStep(run.situation);
        if (next.say.startsWith("The shipped combination was never tried")) return;
        const event = done(run.situation, next.on);
        expect(run.hindrance(event), next.say).toBeUndefined();
        run.take({ ...event, at_ms: 100 + step });
      }
      expect(run.isHandedOver).toBe(true);
    }),
    { numRuns: draws(50, 400) },
  );
});
