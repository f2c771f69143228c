import { describe, expect, test } from "vitest";
import { type NameDraft, readDraft } from "../../../../../src/app/exercises/handover/trouble/nameDraft";
import { seenRow } from "../../../../../src/app/exercises/handover/trouble/observationRows";
import { TroubleSession } from "../../../../../src/app/exercises/handover/trouble/troubleSession";
import { kindsOf, setupOf, taskOf } from "../../../../../src/app/exercises/handover/trouble/troubleSetup";
import { TROUBLE_KINDS } from "../../../../../src/handover/trouble/trouble";
import { shippedProfile } from "../../../../../src/lock/shippedProfiles";
import { seededChance } from "../../../../../src/statistics/chance";

const setupFor = (query: string) => setupOf(new URLSearchParams(query), seededChance(4));
const sessionFor = (query: string) => new TroubleSession(setupFor(query), seededChance(8));

describe("what an address asks for", () => {
  test("lock, conditions, seed and help", () => {
    expect(setupFor("profile=two-wheel&pool=gates-tight,dial-heavy,zero-never-set&seed=12&help=silent")).toEqual({
      lock: "two-wheel",
      pool: ["dial-heavy", "gates-tight"],
      seed: 12,
      help: "silent",
    });
  });

  test("nothing sensible gives any lock, every condition and a seed of its own", () => {
    const setup = setupFor("profile=none&pool=rust&seed=-3&help=loud");
    expect(setup).toMatchObject({ lock: "any", pool: TROUBLE_KINDS, help: "full" });
    expect(setup.seed).toBeGreaterThan(0);
  });

  test("any lock is one that can have a condition of the pool", () => {
    const tasks = Array.from({ length: 12 }, (_, seed) => taskOf({ ...setupFor("pool=zero-one-side"), seed }));
    expect(new Set(tasks.map(({ card }) => card.profile.id))).toEqual(new Set(["dial-encoder"]));
    expect(kindsOf("dial-encoder")).not.toContain("wheel-off");
  });
});

describe("a diagnosis in the form", () => {
  const draft: NameDraft = { kind: "wheel-off", part: "2", size: 1.5, way: "right" };
  test.each([
    [{ kind: null }, "Choose a defect."],
    [{ part: "" }, "Say which wheel."],
    [{ kind: "zero-one-side", part: "" }, "Say in which direction it was set."],
    [{ size: undefined }, "Say how much, a number from 0 to 100."],
    [{ size: -1 }, "Say how much, a number from 0 to 100."],
    [{ way: "" }, "Say which way: left or right."],
  ] as const)("%j is asked for what is missing", (change, words) => {
    expect(readDraft({ ...draft, ...change })).toMatchObject({ says: words });
  });

  test("right is minus, and a kind without places or ways has none", () => {
    expect(readDraft(draft)).toEqual({ kind: "wheel-off", part: "2", size: -1.5 });
    expect(readDraft({ ...draft, kind: "dial-heavy" })).toEqual({ kind: "dial-heavy", part: null, size: 1.5 });
  });
});

describe("a session on the bench", () => {
  test("counts tries and measurements, and marks once", () => {
    const session = sessionFor("profile=three-wheel&pool=dial-heavy&seed=3");
    session.pull("left", 1000);
    session.holdAgainstRules(2000);
    session.dial([0, 0, 0], 0, 3000);
    const { trouble } = session.task;
    session.name(trouble, 9000);
    session.pull("left", 9500);
    session.tell();
    session.tell();
    session.turnBy(10, 9900);
    expect(session.result).toMatchObject({
      profile: "three-wheel",
      seed: 3,
      truth: trouble,
      points: 2,
      tries: 1,
      measurements: 2,
      time_ms: 8000,
    });
    expect(session.bench.log).toHaveLength(3);
  });

  test("a diagnosis taken back costs nothing but time, and the bench is open again", () => {
    const session = sessionFor("profile=three-wheel&pool=dial-heavy&seed=3");
    session.name({ kind: "index-slipped", part: null, size: 1 }, 100);
    session.withdraw();
    session.pull("right", 200);
    expect(session.state).toBe("measuring");
    expect(session.memory).toEqual({ tries: 0, measurements: 1, named: null });
  });

  test("the same again is the same lock with nothing seen, another has another seed", () => {
    const session = sessionFor("profile=three-wheel&seed=3");
    const { task } = session;
    session.readCam("left", 10);
    session.again();
    expect(session.task).toEqual(task);
    expect([session.bench.log, session.memory.measurements]).toEqual([[], 0]);
    session.another();
    expect(session.setup.seed).not.toBe(3);
  });

  test("more or less help leaves the lock alone; another lock takes the conditions it can have", () => {
    const session = sessionFor("profile=three-wheel&pool=wheel-off&seed=3");
    session.readCam("left", 10);
    session.change({ help: "silent" });
    expect(session.bench.log).toHaveLength(1);
    session.change({ lock: "dial-encoder" });
    expect(session.setup.pool).toEqual(kindsOf("dial-encoder"));
    expect(session.bench.log).toHaveLength(0);
  });
});

test("things seen are told in words", () => {
  const card = { profile: shippedProfile("three-wheel"), combination: [38, 71, 26], lostMotion: 0 };
  const hand = { kind: "try", stops: [38.2, 71, 26], off: [0.2, 0, 0], isTurnedRight: false, opened: false } as const;
  expect(seenRow({ ...hand, by: "own hand", rest_s: null }, 0, card)).toEqual({
    key: "1",
    done: "Own hand: 38.2 (+0.2) · 71.0 · 26.0",
    showed: "did not open; the turns were wrong",
  });
  const rig = { ...hand, by: "steady hand", rest_s: 12, isTurnedRight: true, opened: true } as const;
  expect(seenRow(rig, 4, card)).toEqual({
    key: "5",
    done: "Steady hand: 38 (+0.2) · 71 · 26, rest 12 s",
    showed: "opened",
  });
  expect(seenRow({ kind: "cam", turn: "left", value: -0.9 }, 0, card).showed).toBe("−0.9");
  expect(seenRow({ kind: "rules", broken: [] }, 0, card).showed).toBe("none broken");
});
