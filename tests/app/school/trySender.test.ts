import { describe, expect, test } from "vitest";
import type { Answer } from "../../../src/app/school/askServer";
import { type SentTry, TrySender } from "../../../src/app/school/trySender";
import { triesRight } from "../../support/testTries";

type Receipt = Answer<{ has: number[] }>;

/** A server with a memory, that can be silent, and a clock that the test turns. */
function fakeWorld() {
  const had = new Map<number, SentTry>();
  const later: { act: () => void; wait_ms: number }[] = [];
  const posts: number[][] = [];
  const world = {
    now: 1000,
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
    later: (act, wait_ms) => later.push({ act, wait_ms }),
  });
  return { world, sender, had, later, posts };
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
    expect(later.map(({ wait_ms }) => wait_ms)).toEqual([2000, 4000]);
    world.answer = null;
    world.now = 65_000;
    later[0]?.act();
    await new Promise(setImmediate);
    expect([...had.values()].map(({ waited_ms }) => waited_ms)).toEqual([64_000, 4000]);
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
