import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { keepVisit, recallVisit } from "../../../../src/app/exercises/service/keptVisit";
import { VisitSession } from "../../../../src/app/exercises/service/visitSession";
import { visitSetupOf } from "../../../../src/app/exercises/service/visitSetup";
import { visitActSchema } from "../../../../src/service/visitActSchema";
import { visitFaults } from "../../../../src/service/visitFault";
import { seededChance } from "../../../../src/statistics/chance";
import { serve, visitOf } from "../../../support/technician";

const KEY = "gatefall.service-visit";
const ANY = new URLSearchParams();
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

function resumed(): VisitSession {
  const { kept, problem } = recallVisit(ANY);
  expect(problem).toBeNull();
  if (kept === null) throw new Error("nothing is kept");
  const session = new VisitSession(kept.setup, seededChance(1));
  session.resume(kept.acts, kept.worked_ms);
  return session;
}

describe("a visit under way", () => {
  test("goes on after any act as it was: what was seen, what is wrong, how long it took", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), (most) => {
        const before = worked(most);
        // What stood in the way belongs to it too.
        before.act({ type: "key.replaced" });
        keepVisit({ setup: before.setup, worked_ms: 9000, acts: before.tried });
        const after = resumed();
        expect(after.visit.done).toEqual(before.visit.done);
        expect(after.visit.lock).toEqual(before.visit.lock);
        expect(visitFaults(after.visit)).toEqual(visitFaults(before.visit));
        expect(after.log).toEqual(["You are back in your visit, where you left it.", ...before.log]);
        expect([after.setup, after.worked_ms]).toEqual([before.setup, 9000]);
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
    keepVisit({ setup: SETUP, worked_ms: 0, acts: [{ type: "tried" }] });
    const { kept, problem } = recallVisit(new URLSearchParams(address));
    expect([kept !== null, problem]).toEqual([isIt, null]);
    expect(store.has(KEY)).toBe(true);
  });

  test("that is over is kept no more", () => {
    keepVisit({ setup: SETUP, worked_ms: 0, acts: [] });
    expect(keepVisit(null)).toBe(true);
    expect(store.size).toBe(0);
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
    JSON.stringify({ ...good, acts: [{ type: "drilled" }] }),
    JSON.stringify({ ...good, acts: [{ type: "toString" }] }),
    JSON.stringify({ ...good, acts: [{ type: "screw.tightened", torque_Nm: "0.6" }] }),
    JSON.stringify({ ...good, acts: [{ type: "screw.tightened" }] }),
    JSON.stringify({ ...good, acts: [{ type: "lubricated", at: "hinge", with: "oil" }] }),
    JSON.stringify({ ...good, acts: [{ type: "tried", opened: true }] }),
    JSON.stringify({ ...good, acts: Array.from({ length: 5001 }, () => ({ type: "tried" })) }),
  ])("is told and set aside: %s", (text) => {
    store.set(KEY, JSON.stringify(good));
    expect(recallVisit(ANY).kept).not.toBeNull();
    store.set(KEY, text);
    const { kept, problem } = recallVisit(ANY);
    expect(kept).toBeNull();
    expect(problem).toMatch(/cannot be read\. A copy is kept in this browser\. This is a new visit/);
    expect(store.get(`${KEY}.unread`)).toBe(text);
  });

  test("is set aside beside what was set aside before; with no room it says so", () => {
    for (const text of ["one", "two", "two"]) {
      store.set(KEY, text);
      recallVisit(ANY);
    }
    expect([store.get(`${KEY}.unread`), store.get(`${KEY}.unread.2`), store.has(`${KEY}.unread.3`)]).toEqual([
      "one",
      "two",
      false,
    ]);
    vi.stubGlobal("localStorage", {
      getItem: (key: string) => store.get(key) ?? null,
      setItem: () => {
        throw new DOMException("full", "QuotaExceededError");
      },
    });
    store.set(KEY, "three");
    expect(recallVisit(ANY).problem).toMatch(/no room for a copy: what you do next replaces it/);
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
