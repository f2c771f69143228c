import { expect, test } from "vitest";
import { type Keeper, KeepingQueue } from "../../../src/app/logbook/keepingQueue";

const done = async () => undefined;
const kept = async () => new Set<string>();
const keeper: Keeper = {
  openUp: done,
  keepAttempt: done,
  keepZeroing: done,
  keepJob: done,
  keepFor: kept,
  keepMissing: kept,
  hasEnded: async () => false,
  dropAttempt: done,
};

test("keeps records one after the other, in order", async () => {
  const done: number[] = [];
  const queue = new KeepingQueue(async () => keeper);
  const keeping = (number: number, wait_ms: number) => async () => {
    await new Promise((resolve) => setTimeout(resolve, wait_ms));
    done.push(number);
  };
  await Promise.all([queue.add(keeping(1, 20)), queue.add(keeping(2, 0)), queue.add(keeping(3, 5))]);
  expect(done).toEqual([1, 2, 3]);
});

test("lets records wait while the logbook cannot be fetched, and keeps them with the next", async () => {
  const done: number[] = [];
  let isOnline = false;
  const queue = new KeepingQueue(async () => {
    if (!isOnline) throw new Error("offline");
    return keeper;
  });
  await queue.add(async () => void done.push(1));
  expect(done).toEqual([]);
  isOnline = true;
  await queue.add(async () => void done.push(2));
  expect(done).toEqual([1, 2]);
});

test("goes on after a record that is not taken", async () => {
  const done: number[] = [];
  const queue = new KeepingQueue(async () => keeper);
  await queue.add(() => Promise.reject(new Error("no")));
  await queue.add(async () => void done.push(2));
  expect(done).toEqual([2]);
});
