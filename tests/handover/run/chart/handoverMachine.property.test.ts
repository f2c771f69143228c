import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { HandoverRun } from "../../../../src/handover/run/handoverRun";
import type { HandoverEvent } from "../../../../src/handover/run/rules/handoverEvent";
import { missingProofs } from "../../../../src/handover/run/rules/proofs";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { cleanSteps, DOOR_TO_FIT, EVENTS, fitted } from "../../../support/handoverEvents";
import { plainStep } from "../../../support/plainHandover";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 120_000 });

const KINDS = ["wheel-pack", "dial-encoder"] as const;
const PROFILES = { "wheel-pack": shippedProfile("three-wheel"), "dial-encoder": shippedProfile("dial-encoder") };

/** A clean handover with anything put in between, and steps left out: deep in the duty, and not on its rails. */
const anyDuty = (kind: (typeof KINDS)[number]) => {
  const clean = cleanSteps(kind);
  return fc
    .array(fc.tuple(fc.noBias(fc.nat({ max: 99 })), fc.constantFrom(...EVENTS)), {
      minLength: clean.length,
      maxLength: clean.length,
    })
    .map((draws) => draws.flatMap(([luck, event], k) => duty(luck, event, clean[k] as HandoverEvent)));
};

const duty = (luck: number, event: HandoverEvent, clean: HandoverEvent) => {
  if (luck < 2) return [];
  return luck < 12 ? [event, clean] : [clean];
};

const OF_FITTING: readonly HandoverEvent["type"][] = ["lock.fitted", "lock.takenApart", "parts.replaced"];

/** The events of a duty that a run takes; what is hindered does not happen. */
const taken = (run: HandoverRun, events: readonly HandoverEvent[]): HandoverEvent[] =>
  events.filter((event, at_ms) => {
    const isTaken = !run.isHandedOver && run.hindrance(event) === undefined;
    if (isTaken) run.take({ ...event, at_ms });
    return isTaken;
  });

const openings = (events: readonly HandoverEvent[], by: string) =>
  events.filter((event) => event.type === "combination.dialed" && event.opened && event.by === by).length;

/** That the history of a signed door holds what must have been done, told from the events alone. */
const expectDone = (made: readonly HandoverEvent[]) => {
  const changed = made.findLastIndex(({ type }) => type === "combination.changed");
  const own = made.slice(changed);
  // Three with the door open, and one from outside.
  expect(openings(own, "trainee") + openings(own, "second")).toBeGreaterThanOrEqual(5);
  expect(openings(own, "trainee")).toBeGreaterThanOrEqual(3);
  expect(openings(own, "second")).toBeGreaterThanOrEqual(1);
  expect(openings(made.slice(0, changed), "trainee") + openings(made.slice(0, changed), "second")).toBeGreaterThan(0);
  expect(made[changed]).toMatchObject({ outcome: "true", isAllowed: true });
  const types = made.map(({ type }) => type);
  const always = ["mounting.measured", "ring.aligned", "holdback.set", "holdback.released", "wayOut.checked"];
  expect(types).toEqual(expect.arrayContaining([...always, "observer.entered", "observer.left", "record.written"]));
  expect(own.map(({ type }) => type)).toEqual(expect.arrayContaining(["door.shut", "lock.spunOff"]));
};

describe.each(KINDS)("any run of a %s", (kind) => {
  test("with a lock that was fitted without a fault is any run with a lock that came on its door", () => {
    let handedOver = 0;
    fc.assert(
      fc.property(anyDuty(kind), (events) => {
        const [found, made] = [new HandoverRun(PROFILES[kind]), new HandoverRun(PROFILES[kind], DOOR_TO_FIT)];
        made.take({ ...fitted(true), at_ms: 0 });
        for (const [at_ms, event] of events.filter(({ type }) => !OF_FITTING.includes(type)).entries()) {
          const hindrance = found.hindrance(event);
          expect(made.hindrance(event)).toEqual(hindrance);
          if (hindrance !== undefined) continue;
          const [one, other] = [found.take({ ...event, at_ms }), made.take({ ...event, at_ms })];
          const fit = { fit: "faultless", fitChecks: "made" };
          expect(other).toEqual({ ...one, situation: { ...one.situation, ...fit } });
        }
        expect(made.isHandedOver).toBe(found.isHandedOver);
        if (made.isHandedOver) handedOver += 1;
      }),
      { numRuns: 50 },
    );
    expect(handedOver).toBeGreaterThan(1);
  });

  test.each([
    { door: null, how: "came on its door" },
    { door: DOOR_TO_FIT, how: "was fitted first" },
  ])("whose lock $how goes as the plain telling says, and keeps every fault", ({ door }) => {
    fc.assert(
      fc.property(anyDuty(kind), fc.boolean(), (rest, fits) => {
        const events = [fitted(fits), ...rest];
        const run = new HandoverRun(PROFILES[kind], door);
        let plain = run.situation;
        let faults = 0;
        for (const [at_ms, event] of events.entries()) {
          if (run.isHandedOver || run.hindrance(event) !== undefined) continue;
          const told = plainStep(plain, event);
          const made = run.take({ ...event, at_ms });
          plain = told.situation;
          faults += told.faults.length;
          expect([...made.faults].sort()).toEqual([...told.faults].sort());
          expect(run.situation).toEqual(plain);
          expect(run.isHandedOver).toBe(told.isHandedOver);
        }
        expect(run.steps.flatMap((step) => step.faults).length).toBe(faults);
      }),
      { numRuns: 50 },
    );
  });

  test("that is handed over has in its history what must have been done", () => {
    let handedOver = 0;
    fc.assert(
      fc.property(anyDuty(kind), (events) => {
        const run = new HandoverRun(PROFILES[kind]);
        const made = taken(run, events);
        expect(missingProofs(run.situation).length === 0 && made.at(-1)?.type === "duty.signed").toBe(run.isHandedOver);
        if (!run.isHandedOver) return;
        handedOver += 1;
        expectDone(made);
      }),
      { numRuns: 50 },
    );
    expect(handedOver).toBeGreaterThan(1);
  });
});

test("going back in the debrief restores what was, and erases nothing", () => {
  fc.assert(
    fc.property(anyDuty("wheel-pack"), fc.nat({ max: 25 }), (events, steps) => {
      const run = new HandoverRun(PROFILES["wheel-pack"]);
      taken(run, events);
      const before = run.steps.map(({ event, faults }) => ({ event, faults }));
      const target = Math.min(steps, run.length);
      const wanted = target === 0 ? new HandoverRun(run.profile).situation : run.steps[target - 1]?.situation;
      run.goBackTo(target);
      expect(run.situation).toEqual(wanted);
      expect(run.steps.map(({ event, faults }) => ({ event, faults }))).toEqual(before);
      expect(run.steps.map(({ isUndone }) => isUndone)).toEqual(before.map((_, k) => k >= target));
    }),
    { numRuns: 20 },
  );
});
