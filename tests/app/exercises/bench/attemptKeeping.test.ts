import { beforeEach, expect, test } from "vitest";
import { AttemptKeeping } from "../../../../src/app/exercises/bench/attemptKeeping";
import { BenchSession } from "../../../../src/app/exercises/bench/benchSession";
import type { NotedAttempt } from "../../../../src/app/keeping/notedAttempt";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { describeSource } from "../../../../src/realdial/sources/sourceDescription";
import { seededChance } from "../../../../src/statistics/chance";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { NOON } from "../../../support/logbookRecords";

const profile = shippedProfile("three-wheel");
const combination = profile.asSet ?? [];

let bench: BenchSession;
let keeping: AttemptKeeping;
let kept: NotedAttempt[];
let dropped: string[];
let clock: number;

beforeEach(() => {
  bench = new BenchSession({ profile, source: "as-set", combination, help: "full", dial: "usual" }, seededChance(1));
  kept = [];
  dropped = [];
  clock = 0;
  let count = 0;
  const taker = { keep: (note: NotedAttempt) => kept.push(note), drop: (id: string) => dropped.push(id) };
  keeping = new AttemptKeeping(bench, () => `id${count++}`, taker);
  bench.subscribe(() => keeping.look(NOON + clock));
});

const turn = (by: number) => {
  clock += 1000;
  bench.turnBy(by, clock);
};

/** Dials the combination to its end. */
const dial = () => {
  const path = idealMotion(profile, combination, bench.lock.dial, [], 5);
  for (const [i, end] of path.slice(1).entries()) turn(end - (path[i] ?? 0));
};

test("an attempt under way is kept from its first whole turn on, whenever it has grown", () => {
  turn(60);
  keeping.flush(NOON);
  expect(kept).toEqual([]);
  turn(50);
  keeping.flush(NOON);
  keeping.flush(NOON);
  expect(kept.map(({ record }) => [record.id, record.isUnfinished, record.opened])).toEqual([["id0", true, false]]);
  turn(50);
  keeping.flush(NOON);
  expect(kept.map(({ motion }) => motion?.positions.at(-1) ?? 0).map((at) => at - bench.attempt.dial)).toEqual([
    -50, 0,
  ]);
  for (const { record } of kept) {
    expect(() => checkWrite({ kind: "attempts", record: { ...record, personId: "tavro" } })).not.toThrow();
  }
});

test("one that ends takes the place of what was kept of it", () => {
  turn(120);
  keeping.flush(NOON);
  dial();
  keeping.flush(NOON);
  expect(kept.map(({ record }) => [record.id, record.isUnfinished === true, record.opened])).toEqual([
    ["id0", true, false],
    ["id0", false, true],
  ]);
  bench.again();
  expect(dropped).toEqual([]);
});

test("one that is put away is dropped, and the next has a record of its own", () => {
  turn(120);
  keeping.flush(NOON);
  bench.again();
  expect(dropped).toEqual(["id0"]);
  turn(120);
  keeping.flush(NOON);
  expect(kept.at(-1)?.record.id).toBe("id1");
});

test("one that was never kept has nothing to be dropped", () => {
  turn(120);
  bench.drawAnother();
  expect(dropped).toEqual([]);
});

test("an ended attempt is kept again, under its id, once its estimate is given", () => {
  turn(120);
  dial();
  expect(kept.map(({ record }) => record.estimate)).toEqual([undefined]);
  clock += 1000;
  bench.giveEstimate(0.5);
  bench.again();
  expect(kept.map(({ record }) => [record.id, record.estimate])).toEqual([
    ["id0", undefined],
    ["id0", 0.5],
  ]);
  expect(kept[1]?.record.updatedAt).toBe(NOON + clock);
});

test("an attempt names what turned it, and the next one begins with nothing but its own", () => {
  const encoder = describeSource("encoder", 0.05);
  bench.noteSource(encoder);
  dial();
  expect(kept.at(-1)?.record.sources).toEqual([encoder]);
  bench.again();
  bench.noteSource();
  dial();
  expect(kept).toHaveLength(2);
  expect(kept.at(-1)?.record).not.toHaveProperty("sources");
});

test("an attempt keeps no motion from the moment on that a dial turned it of which none is to be kept", () => {
  const real = describeSource("ordinary-dial", 0.06, null, false);
  turn(120);
  keeping.flush(NOON);
  expect(kept.at(-1)?.motion).not.toBeNull();
  bench.noteSource(real);
  dial();
  expect(kept.at(-1)?.motion).toBeNull();
  expect(kept.at(-1)?.record).toMatchObject({ id: "id0", sources: [real] });
  expect(kept.at(-1)?.record.stops).not.toEqual([]);
  // The next one is begun by the screen again.
  bench.again();
  bench.noteSource();
  dial();
  expect(kept.at(-1)?.motion?.positions.length).toBeGreaterThan(0);
});

test.each([
  ["the turn that threw the bolt goes on as the next attempt's", 30, true],
  ["the hand turned about before the screen went on", 0, false],
])(
  "what a dial in the hand began of the next attempt is of that one, its motion is not kept: %s",
  (_, by, isOfNext) => {
    const real = describeSource("ordinary-dial", 0.06, null, false);
    bench.noteSource(real);
    dial();
    const ended = bench.attempt;
    // Away from the draw, while the bolt is still back.
    if (by > 0) turn(by);
    bench.noteSource();
    for (let k = 0; k < 20 && bench.attempt === ended; k++) turn(60);
    // Turning on the same way is no attempt yet; turning about is.
    for (let k = 0; k < 20 && bench.attempt === ended; k++) turn(-60);
    expect(bench.attempt).not.toBe(ended);
    for (let k = 0; k < 4; k++) turn(60);
    keeping.flush(NOON);
    const last = kept.at(-1);
    expect(last?.record.id).toBe("id1");
    expect(last?.record.sources?.map(({ kind }) => kind)).toEqual(isOfNext ? ["ordinary-dial", "screen"] : undefined);
    expect(last?.motion === null).toBe(isOfNext);
  },
);
