import { expect, test } from "vitest";
import { benchAfter, boardAfter, silentBench } from "../../../src/school/live/liveBoard";
import { type BenchTelling, GONE_MS, type LiveBench } from "../../../src/school/wire/liveWire";

const NOW = 1_795_000_000_000;
const here: LiveBench = { ...silentBench("d", NOW), isHere: true };
const state = (isWaiting: boolean): BenchTelling => ({
  v: 1,
  kind: "state",
  state: { personId: "p", exercise: "bench", isWaiting, unsent: 0 },
});
const growing: BenchTelling = {
  v: 1,
  kind: "attempt",
  attempt: { id: "a", startedAt: NOW, profileId: "three-wheel", combination: [1, 2, 3], motion: "AAAA" },
};

test("an attempt grows, ends when nobody works on and stays to be seen, until the next one or its bench takes it back", () => {
  const steps: readonly [BenchTelling, boolean | null][] = [
    [state(false), null],
    [growing, false],
    [state(true), true],
    [state(false), true],
    [growing, false],
    [{ v: 1, kind: "attempt", attempt: null }, null],
  ];
  let bench = here;
  for (const [told, hasEnded] of steps) {
    bench = benchAfter(bench, told, NOW);
    expect(bench.attempt?.hasEnded ?? null).toBe(hasEnded);
  }
});

const hand = { personId: "p", raisedAt: NOW };

test.each([
  { name: "is here", bench: here, stays: true },
  { name: "went", bench: { ...here, isHere: false }, stays: false },
  { name: "went with its hand up", bench: { ...here, isHere: false, hand }, stays: true },
])("long after, a bench that $name is on the board: $stays", ({ bench, stays }) => {
  const event = (now: number, benches: LiveBench[]) => ({ v: 1 as const, isAll: false, now, benches });
  const board = boardAfter(new Map(), event(NOW + GONE_MS, [bench]));
  expect(board.size).toBe(1);
  expect(boardAfter(board, event(NOW + GONE_MS + 1, [])).has("d")).toBe(stays);
});
