import { describe, expect, test } from "vitest";
import type { Answer } from "../../../src/app/school/askServer";
import { type SentTry, TrySender } from "../../../src/app/school/trySender";
import { triesRight } from "../../support/testTries";

type Receipt = Answer<{ has: number[] }>;

/** A server with a memory, that can be silent, and a clock that the test turns. */
function fakeWorld() {
  const had = new Map<number, SentTry>();
  const later: { act: () => void; wait_ms: number }[] = [];
  const calledOff: number[] = [];
  const posts: number[][] = [];
  const world = {
    now: 1000,
    chance: 0,
    answer: null as Receipt | null,
  };
  const sender = new TrySender({
    post: async (_id, tries) => {
      posts.push(tries.map(({ index }) => index));
      if (world.answer !== null) return world.answer;
      for (const one of tries) had.set(one.index, one);
      return { kind: "answered", value: { has: [...had.keys()] } };
    },
    now: () => world.now,
    chance: () => world.chance,
    later: (act, wait_ms) => {
      const place = later.push({ act, wait_ms }) - 1;
      return () => calledOff.push(place);
    },
  });
  return { world, sender, had, later, calledOff, posts };
}

const TRIES = triesRight(2, 3);
const sitting = (count: number) => ({
  id: "one",
  results: TRIES.slice(0, count),
  motions: () => ["m0", null, "m2"],
});

describe("tries are sent as they end", () => {
  test("each once, with its motion", async () => {
    const { sender, had, posts } = fakeWorld();
    await sender.look(sitting(1));
    await sender.look(sitting(1));
    await sender.look(sitting(3));
    expect(posts).toEqual([[0], [1, 2]]);
    expect([...had.values()].map(({ motion }) => motion)).toEqual(["m0", null, "m2"]);
  });

  test("without a network they wait, and say how long they did", async () => {
    const { world, sender, had, later } = fakeWorld();
    world.answer = { kind: "silent" };
    await sender.look(sitting(1));
    world.now = 61_000;
    await sender.look(sitting(2));
    world.answer = null;
    world.now = 65_000;
    later[0]?.act();
    await new Promise(setImmediate);
    expect([...had.values()].map(({ waited_ms }) => waited_ms)).toEqual([64_000, 4000]);
  });

  test("whatever happens in the sitting, one waits, longer after each failure up to a minute, and no two benches alike", async () => {
    const { world, sender, later, posts } = fakeWorld();
    world.answer = { kind: "silent" };
    for (let look = 0; look < 5; look++) await sender.look(sitting(1));
    expect([posts.length, later.length]).toEqual([1, 1]);
    for (let failure = 0; failure < 7; failure++) {
      world.chance = failure % 2 === 0 ? 0 : 0.5;
      later[failure]?.act();
      await new Promise(setImmediate);
      await sender.look(sitting(1));
    }
    expect(later.map(({ wait_ms }) => wait_ms)).toEqual([1000, 2000, 6000, 8000, 24_000, 32_000, 48_000, 32_000]);
  });

  test("when the network is back they go at once", async () => {
    const { world, sender, had, calledOff } = fakeWorld();
    world.answer = { kind: "silent" };
    await sender.look(sitting(2));
    world.answer = null;
    await sender.hurry();
    expect([had.size, calledOff]).toEqual([2, [0]]);
  });

  test("who asked too often, or is signed out, asks again when that may have passed", async () => {
    const { world, sender, had, later } = fakeWorld();
    world.answer = { kind: "refused", status: 429, problem: { code: "wait-first", path: [], values: { seconds: 30 } } };
    await sender.look(sitting(1));
    world.answer = { kind: "refused", status: 401, problem: { code: "not-signed-in", path: [], values: {} } };
    later[0]?.act();
    await new Promise(setImmediate);
    world.answer = null;
    later[1]?.act();
    await new Promise(setImmediate);
    expect(later.map(({ wait_ms }) => wait_ms)).toEqual([30_000, 2000]);
    expect(had.size).toBe(1);
  });

  test("what the server refuses is not sent again: it is in the record all the same", async () => {
    const { world, sender, later, posts } = fakeWorld();
    world.answer = { kind: "refused", status: 409, problem: { code: "try-sent-otherwise", path: [], values: {} } };
    await sender.look(sitting(1));
    await sender.look(sitting(2));
    expect([posts.length, later.length]).toEqual([1, 0]);
  });

  test("a server that fails is asked again", async () => {
    const { world, sender, later } = fakeWorld();
    world.answer = { kind: "refused", status: 503, problem: { code: "try-again", path: [], values: {} } };
    await sender.look(sitting(1));
    expect(later).toHaveLength(1);
  });
});
