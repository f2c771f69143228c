import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { FittingSession } from "../../../src/app/exercises/fitting/fittingSession";
import { FIT_CHECKS } from "../../../src/fitting/fitChecks";
import { fittingResult } from "../../../src/fitting/fittingResult";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { tryMisfit } from "../../../src/records/sitting/tryPlausible";
import { trySchema } from "../../../src/records/sitting/trySchemas";
import { drawVisit } from "../../../src/service/drawVisit";
import { Visit } from "../../../src/service/visit";
import { visitResult } from "../../../src/service/visitResult";
import { seededChance } from "../../../src/statistics/chance";
import { goodActs } from "../../support/fitter";
import { hostileFittingAct, hostileVisitAct } from "../../support/hostileActs";
import { fittingStation, serviceStation } from "../../support/testSheet";

vi.setConfig({ testTimeout: 120_000 });

const common = { station: 0, repetition: 1, time_ms: 60_000, isBrokenOff: false };
const seed = fc.nat({ max: 100_000 });

describe.each(["three-wheel", "dial-encoder"])("whatever is done to a lock, %s", (id) => {
  const profile = shippedProfile(id);

  test("a visit to it is a try that can have been", () => {
    fc.assert(
      fc.property(seed, fc.array(hostileVisitAct, { maxLength: 40 }), fc.boolean(), (from, acts, isLeft) => {
        const visit = new Visit(drawVisit(profile, from), seededChance(from));
        for (const act of acts) visit.act(act);
        if (isLeft) visit.leave();
        const one = { kind: "service" as const, ...common, ...visitResult(visit) };
        expect(tryMisfit(one, serviceStation({ profile: id }))).toBeUndefined();
        expect(trySchema.safeParse(one).error).toBeUndefined();
      }),
      { numRuns: 300 },
    );
  });

  test("a fit of it is a try that can have been", () => {
    const step = fc.oneof(hostileFittingAct, fc.constantFrom(...FIT_CHECKS));
    fc.assert(
      fc.property(seed, fc.nat({ max: 14 }), fc.array(step, { maxLength: 20 }), (from, wise, steps) => {
        const session = new FittingSession(profile, seededChance(from));
        for (const act of goodActs(session.lock).slice(0, wise)) session.act(act);
        for (const one of steps) typeof one === "string" ? session.check(one) : session.act(one);
        session.declare();
        const result = fittingResult(session.assembly, session.lock, session.chart.getSnapshot().context);
        const faults = result.faults.map((code) => ({ code }));
        const one = { kind: "fitting" as const, ...common, ...result, faults };
        expect(tryMisfit(one, fittingStation({ profile: id }))).toBeUndefined();
        expect(trySchema.safeParse(one).error).toBeUndefined();
      }),
      { numRuns: 300 },
    );
  });
});
