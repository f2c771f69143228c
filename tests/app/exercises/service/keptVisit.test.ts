import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import {
  firstVisit,
  isVisitUnderWay,
  keptVisitOf,
  VISIT_KEY,
  VISIT_WORK,
} from "../../../../src/app/exercises/service/keptVisit";
import { VisitSession } from "../../../../src/app/exercises/service/visitSession";
import { visitSetupOf } from "../../../../src/app/exercises/service/visitSetup";
import { recallWork } from "../../../../src/app/parts/storage/keptWork";
import { keepText } from "../../../../src/app/parts/storage/safeTexts";
import { EMPTY_RECORD } from "../../../../src/service/visitAct";
import { visitActSchema } from "../../../../src/service/visitActSchema";
import { visitFaults } from "../../../../src/service/visitFault";
import { seededChance } from "../../../../src/statistics/chance";
import { serve, visitOf } from "../../../support/technician";

const SETUP = { lock: "three-wheel", seed: 12, help: "counts" } as const;

const store = new Map<string, string>();
beforeEach(() => {
  store.clear();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => store.get(key) ?? null,
    setItem: (key: string, text: string) => store.set(key, text),
    removeItem: (key: string) => store.delete(key),
  });
});
afterEach(() => void vi.unstubAllGlobals());

/** A visit worked by a technician up to a number of acts. */
function worked(most: number): VisitSession {
  const plan = visitOf(SETUP.seed);
  serve(plan);
  const session = new VisitSession(SETUP, seededChance(1));
  for (const { act } of plan.done.slice(0, most)) session.act(act);
  return session;
}

const keepVisit = (session: VisitSession, steady_ms: number) =>
  keepText(VISIT_KEY, JSON.stringify(keptVisitOf(session, steady_ms)));

const begun = (address = "", steady_ms = 0) => firstVisit(new URLSearchParams(address), seededChance(1), steady_ms);

function resumed(steady_ms: number): VisitSession {
  const { session, problem } = begun("", steady_ms);
  expect(problem).toBeNull();
  return session;
}

describe("a visit under way", () => {
  test("goes on after any act as it was: what was seen, what is wrong, how long it took", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), (most) => {
        const before = worked(most);
        // What stood in the way belongs to it too.
        before.act({ type: "key.replaced" });
        before.begunAt = 1000;
        void keepVisit(before, 10_000);
        const after = resumed(50_000);
        expect(after.visit.done).toEqual(before.visit.done);
        expect(after.visit.lock).toEqual(before.visit.lock);
        expect(visitFaults(after.visit)).toEqual(visitFaults(before.visit));
        expect(after.log).toEqual(["You are back in your visit, where you left it.", ...before.log]);
        // Time away is no time worked.
        expect([after.setup, after.workedBy(51_000)]).toEqual([before.setup, 10_000]);
      }),
      { numRuns: 20 },
    );
  });

  test.each([
    ["", true],
    ["profile=three-wheel&seed=12&help=counts", true],
    ["seed=13", false],
    ["profile=two-wheel", false],
    ["help=silent", false],
    ["profile=any", false],
  ])("goes on where the address asks for it: %s, %s", (address, isIt) => {
    void keepVisit(worked(1), 0);
    const { session, problem } = begun(address);
    expect([isVisitUnderWay(session), problem]).toEqual([isIt, null]);
    expect(store.has(VISIT_KEY)).toBe(true);
  });

  test("has its record as it was marked, before the first act too; another visit begins with an empty one", () => {
    for (const acts of [0, 3]) {
      const before = worked(acts);
      before.write({ ...before.draft, found: ["key-loose"], hasFigures: true });
      expect(isVisitUnderWay(before)).toBe(true);
      void keepVisit(before, 0);
      const after = resumed(50_000);
      expect([after.draft, after.tried]).toEqual([before.draft, before.tried]);
      after.again();
      expect([after.draft, isVisitUnderWay(after)]).toEqual([EMPTY_RECORD, false]);
    }
  });

  test("that is over is kept no more", async () => {
    const session = worked(3);
    expect(isVisitUnderWay(session)).toBe(true);
    void keepVisit(session, 0);
    session.leave();
    expect(isVisitUnderWay(session)).toBe(false);
    expect(await keepText(VISIT_KEY, null)).toBe(true);
    expect(store.has(VISIT_KEY)).toBe(false);
  });
});

const good = { version: 1, setup: SETUP, worked_ms: 5, acts: [{ type: "tried" }] };

describe("a text that cannot be a visit", () => {
  test.each([
    "not json",
    "null",
    "[]",
    JSON.stringify({ ...good, version: 2 }),
    JSON.stringify({ ...good, setup: { ...SETUP, lock: "nobody's" } }),
    JSON.stringify({ ...good, setup: { ...SETUP, lock: "__proto__" } }),
    JSON.stringify({ ...good, setup: { ...SETUP, seed: -1 } }),
    JSON.stringify({ ...good, setup: { ...SETUP, seed: 1e300 } }),
    JSON.stringify({ ...good, setup: { ...SETUP, help: "all" } }),
    JSON.stringify({ ...good, worked_ms: -5 }),
    JSON.stringify({ ...good, more: 1 }),
    JSON.stringify({ ...good, draft: { found: [] } }),
    JSON.stringify({ ...good, draft: { ...EMPTY_RECORD, found: ["dusty"] } }),
    JSON.stringify({ ...good, acts: [{ type: "drilled" }] }),
    JSON.stringify({ ...good, acts: [{ type: "toString" }] }),
    JSON.stringify({ ...good, acts: [{ type: "screw.tightened", torque_Nm: "0.6" }] }),
    JSON.stringify({ ...good, acts: [{ type: "screw.tightened" }] }),
    JSON.stringify({ ...good, acts: [{ type: "lubricated", at: "hinge", with: "oil" }] }),
    JSON.stringify({ ...good, acts: [{ type: "tried", opened: true }] }),
    JSON.stringify({ ...good, acts: Array.from({ length: 5001 }, () => ({ type: "tried" })) }),
  ])("is told and set aside: %s", (text) => {
    store.set(VISIT_KEY, JSON.stringify(good));
    expect(recallWork(VISIT_KEY, VISIT_WORK).kept).not.toBeNull();
    store.set(VISIT_KEY, text);
    const { kept, problem } = recallWork(VISIT_KEY, VISIT_WORK);
    expect(kept).toBeNull();
    expect(problem).toMatch(/cannot be read\. A copy is kept in this browser\. This is a new visit/);
    expect(store.get(`${VISIT_KEY}.unread`)).toBe(text);
  });

  test("is set aside beside what was set aside before; with no room it says so", () => {
    for (const text of ["one", "two", "two"]) {
      store.set(VISIT_KEY, text);
      recallWork(VISIT_KEY, VISIT_WORK);
    }
    expect([
      store.get(`${VISIT_KEY}.unread`),
      store.get(`${VISIT_KEY}.unread.2`),
      store.has(`${VISIT_KEY}.unread.3`),
    ]).toEqual(["one", "two", false]);
    vi.stubGlobal("localStorage", {
      getItem: (key: string) => store.get(key) ?? null,
      setItem: () => {
        throw new DOMException("full", "QuotaExceededError");
      },
    });
    store.set(VISIT_KEY, "three");
    expect(recallWork(VISIT_KEY, VISIT_WORK).problem).toMatch(/no room for a copy: what you do next replaces it/);
  });

  test("every act of every visit can be read again", () => {
    for (let seed = 0; seed < 300; seed++) {
      const visit = visitOf(seed);
      serve(visit);
      for (const { act } of visit.done) expect(visitActSchema.parse(JSON.parse(JSON.stringify(act)))).toEqual(act);
    }
  });
});

test.each([
  ["profile=nobody&seed=-4&help=all", { lock: "any", help: "full" }],
  ["profile=__proto__&seed=1e999&help=", { lock: "any", help: "full" }],
  ["profile=two-wheel&seed=0&help=silent", { lock: "two-wheel", seed: 0, help: "silent" }],
  ["profile=&seed=4.5", { lock: "any" }],
  ["seed=NaN&help=counts&help=full", { help: "counts" }],
])("an address that asks for what cannot be is as one that asks for nothing: %s", (address, wanted) => {
  const setup = visitSetupOf(new URLSearchParams(address), seededChance(2));
  expect(setup).toMatchObject(wanted);
  expect(Number.isSafeInteger(setup.seed) && setup.seed >= 0).toBe(true);
  expect(() => new VisitSession(setup, seededChance(2))).not.toThrow();
});
