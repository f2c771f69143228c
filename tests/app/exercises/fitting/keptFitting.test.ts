import { afterEach, describe, expect, test, vi } from "vitest";
import { FittingNotes } from "../../../../src/app/exercises/fitting/fittingNotes";
import { FittingSession } from "../../../../src/app/exercises/fitting/fittingSession";
import {
  FITTING_WORK,
  fittingKey,
  type KeptFitting,
  lastFitted,
} from "../../../../src/app/exercises/fitting/kept/keptFitting";
import { keptOf, resumedFitting } from "../../../../src/app/exercises/fitting/resumedFitting";
import { recallWork } from "../../../../src/app/parts/storage/keptWork";
import { keepText } from "../../../../src/app/parts/storage/safeTexts";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { seededChance } from "../../../../src/statistics/chance";
import { goodActs } from "../../../support/fitter";
import { NOON } from "../../../support/logbookRecords";

const profile = shippedProfile("three-wheel");
const KEY = "gatefall.fitting.three-wheel";

/** A browser's texts. */
function stubTexts(entries: Record<string, string> = {}) {
  const texts = new Map(Object.entries(entries));
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => texts.get(key) ?? null,
    setItem: (key: string, text: string) => texts.set(key, text),
    removeItem: (key: string) => texts.delete(key),
    key: (index: number) => [...texts.keys()][index] ?? null,
    get length() {
      return texts.size;
    },
  });
  return texts;
}
afterEach(() => vi.unstubAllGlobals());

const keepFitting = (kept: KeptFitting) => keepText(fittingKey(kept.profile), JSON.stringify(kept));
const recallFitting = (id: string) => recallWork(fittingKey(id), FITTING_WORK);

/** A fitting with checks before and after its last act, in its debrief. */
function fittedSession(): FittingSession {
  const session = new FittingSession(profile, seededChance(5));
  session.act({ type: "spindle.replaced" });
  for (const act of goodActs(session.lock).slice(0, -1)) session.act(act);
  session.check("marks");
  session.check("zero");
  session.act({ type: "cover.put" });
  session.check("cover");
  session.declare();
  return session;
}

describe("a fitting that is kept", () => {
  test("goes on with its door, its parts, what its checks showed, its help and its time", () => {
    stubTexts();
    const session = fittedSession();
    session.begunAt = NOON;
    session.setHelp("silent");
    keepFitting(keptOf(session, NOON + 60_000));
    const { kept, problem } = recallFitting(profile.id);
    if (kept === null) throw new Error("nothing is kept");
    expect(problem).toBeNull();
    const again = resumedFitting(kept, profile, seededChance(9), null, NOON + 3_600_000);
    if (again === null) throw new Error("it does not go on");
    const { lock, assembly, log, help, helpHad, wasDeclared, chart } = again;
    const { lock: door, ...before } = session;
    expect({ assembly, log, help, helpHad, wasDeclared }).toEqual({
      assembly: before.assembly,
      log: before.log,
      help: "silent",
      helpHad: "counts",
      wasDeclared: true,
    });
    expect(lock).toEqual(door);
    expect(chart.getSnapshot()).toMatchObject({
      value: "declared",
      context: session.chart.getSnapshot().context,
    });
    // An hour away is not an hour of work.
    expect(again.begunAt).toBe(NOON + 3_540_000);
  });

  test("is the same job: its debrief was already taken down", () => {
    stubTexts();
    const session = fittedSession();
    const again = resumedFitting(keptOf(session, NOON), profile, seededChance(9), null, NOON);
    if (again === null) throw new Error("it does not go on");
    const notes = new FittingNotes(again, () => "id");
    again.goOn();
    again.declare();
    expect(notes.look(NOON)).toBeNull();
    again.again();
    again.act({ type: "body.hung" });
    expect(again.begunAt).toBeNull();
    expect(again.wasDeclared).toBe(false);
  });

  test("is set aside and told of where it cannot be read, and nothing that was set aside before is lost", () => {
    const texts = stubTexts({ [KEY]: "{broken", [`${KEY}.unread`]: "older" });
    const { kept, problem } = recallFitting(profile.id);
    expect(kept).toBeNull();
    expect(problem).toMatch(/cannot be read\. A copy is kept/);
    expect(texts.get(`${KEY}.unread`)).toBe("older");
    expect(texts.get(`${KEY}.unread.2`)).toBe("{broken");
  });

  test.each([
    ["an act that there is not", { acts: [{ type: "door.kicked" }] }],
    ["a check that there is not", { checks: [{ after: 0, check: "smell", seed: 1 }] }],
    ["a lock that is not shipped", { profile: "another" }],
    ["a number that is none", { worked_ms: "long" }],
    ["another version", { version: 2 }],
  ])("cannot be read with %s", (_, wrong) => {
    stubTexts({ [KEY]: JSON.stringify({ ...keptOf(fittedSession(), NOON), ...wrong }) });
    expect(recallFitting(profile.id)).toMatchObject({ kept: null, problem: expect.stringContaining("cannot be read") });
  });

  test("does not go on where its acts do not go on its lock", () => {
    const kept = keptOf(fittedSession(), NOON);
    const acts = [{ type: "key.put" } as const, ...kept.acts];
    expect(resumedFitting({ ...kept, acts }, profile, seededChance(1), null, NOON)).toBeNull();
  });

  test("is found by the lock that was worked on last", () => {
    stubTexts();
    expect(lastFitted()).toBeNull();
    keepFitting(keptOf(fittedSession(), NOON));
    keepFitting({ ...keptOf(fittedSession(), NOON + 1), profile: "two-wheel" });
    expect(lastFitted()).toBe("two-wheel");
  });
});

describe("a kept text that no fitting wrote", () => {
  const sound = () => JSON.parse(JSON.stringify(keptOf(fittedSession(), NOON)));
  const read = (kept: unknown) => {
    const texts = stubTexts({ [KEY]: JSON.stringify(kept) });
    return { ...recallFitting(profile.id), aside: texts.get(`${KEY}.unread`) };
  };

  test("is read where it is sound", () => {
    expect(read(sound())).toMatchObject({ problem: null, kept: { version: 1 } });
  });

  const act = { type: "ring.taken" };
  test.each([
    { door: { slotAt: 1e308, bend: { x_mm: 0, y_mm: 0 } } },
    { door: { slotAt: -1, bend: { x_mm: 0, y_mm: 0 } } },
    { door: { slotAt: 3, bend: { x_mm: 1e308, y_mm: 0 } } },
    { door: null },
    { acts: Array.from({ length: 5001 }, () => act) },
    { acts: { length: 1e9 } },
    { checks: [{ after: 0, check: "rim", seed: 0.5 }] },
    { checks: [{ after: 0, check: "rim", seed: 1e308 }] },
    { checks: [{ after: -1, check: "rim", seed: 1 }] },
    { checks: [{ after: 0, check: "__proto__", seed: 1 }] },
    { worked_ms: 1e308 },
    { worked_ms: -1 },
    { profile: "constructor" },
    { help: "toString" },
  ])("is set aside whole and told: %#", (fields) => {
    const { kept, problem, aside } = read({ ...sound(), ...fields });
    expect(kept).toBeNull();
    expect(problem).toMatch(/cannot be read/);
    expect(aside).toBeDefined();
  });
});
