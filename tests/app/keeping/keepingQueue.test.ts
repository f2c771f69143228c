import { expect, test } from "vitest";
import { actNow, afterDrawing } from "../../../src/app/keeping/afterDrawing";
import { type Keeper, KeepingQueue, type SavingState, type WaitingNote } from "../../../src/app/keeping/keepingQueue";
import { forgetLeft, leaveNotes, leftNotes } from "../../../src/app/keeping/leftNotes";
import type { PageStore } from "../../../src/app/parts/storage/pageStore";
import { RecordError } from "../../../src/records/recordError";
import { recordProblem } from "../../../src/records/recordWords";
import { storageError } from "../../../src/store/storageProblem";
import { aJob } from "../../support/logbookRecords";

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
  watch: done,
  retry: done,
  keepLeft: done,
  copyWaiting: () => undefined,
};

const jobNote = (id: string): WaitingNote => {
  const { personId: _, ...note } = aJob(id);
  return { kind: "job", note };
};

/** The storage of a page. */
function memoryStore(): PageStore {
  const texts = new Map<string, string>();
  return {
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, text) => void texts.set(key, text),
    removeItem: (key) => void texts.delete(key),
    key: (index) => [...texts.keys()][index] ?? null,
    get length() {
      return texts.size;
    },
  };
}

test("says why records wait where what keeps them cannot be fetched, and leaves them to the next page", async () => {
  const queue = new KeepingQueue(() => Promise.reject(new Error("offline")));
  await queue.start();
  await queue.keep(jobNote("j1"));
  expect(queue.state).toMatchObject({ waiting: 1, problem: expect.stringMatching(/could not be loaded.*Reload/) });
  const store = memoryStore();
  expect(leaveNotes(queue.notes, store)).toBe(true);
  expect(leaveNotes(queue.notes, store), "a second time").toBe(true);
  const left = leftNotes(store);
  expect([...left.values()]).toEqual([[jobNote("j1")]]);
  expect(leftNotes(store).size, "until it is forgotten").toBe(1);
  forgetLeft(left, store);
  expect(leftNotes(store).size).toBe(0);
  expect(leaveNotes(queue.notes, null)).toBe(false);
});

test("tells how safe the records are, as what keeps them says", async () => {
  const state = { waiting: 2, problem: "No room.", remedy: "retry", isCopied: false } as const;
  const queue = new KeepingQueue(async () => ({ ...keeper, watch: async (hear) => hear(state) }));
  await queue.start();
  expect(queue.state).toEqual(state);
});

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

test("a record that is refused for good is said, and stays said when all else is well", async () => {
  let tell: (state: SavingState) => void = () => {};
  const refusing: Keeper = {
    ...keeper,
    watch: async (hear) => {
      tell = hear;
    },
    keepJob: async () => {
      throw new RecordError(recordProblem("any-whole", ["createdAt"]), "jobs");
    },
  };
  const queue = new KeepingQueue(async () => refusing);
  await queue.keep(jobNote("j1"));
  expect(queue.state.problem).toContain("not one that can be saved (jobs: createdAt must be a whole number)");
  tell({ waiting: 0, problem: null, remedy: "retry", isCopied: true });
  expect(queue.state.problem).toContain("not one that can be saved");
});

test("so is a part of a sitting that is refused for good, and what waits behind it is kept", async () => {
  const done: number[] = [];
  const refusing: Keeper = {
    ...keeper,
    keepFor: async () => {
      throw new RecordError(recordProblem("any-whole", ["startedAt"]), "sittings");
    },
  };
  const queue = new KeepingQueue(async () => refusing);
  await queue.add(({ keepFor }) => keepFor(null, () => []));
  await queue.add(async () => void done.push(2));
  expect(queue.state.problem).toContain("not one that can be saved (sittings: startedAt must be a whole number)");
  expect(done).toEqual([2]);
});

test("storage that fails is told by the logbook, and not a second time", async () => {
  const failing: Keeper = {
    ...keeper,
    keepJob: async () => {
      throw storageError("storage-failed", []);
    },
  };
  const queue = new KeepingQueue(async () => failing);
  await queue.keep(jobNote("j1"));
  expect(queue.state.problem).toBeNull();
});

test("a record that is just being stored goes with those that a page leaves, until it is stored", async () => {
  let store: () => void = () => {};
  const storing = new Promise<void>((resolve) => {
    store = resolve;
  });
  const queue = new KeepingQueue(async () => ({ ...keeper, keepJob: () => storing }));
  await queue.start();
  const all = [queue.keep(jobNote("j1")), queue.keep(jobNote("j2"))];
  await new Promise((resolve) => setTimeout(resolve, 5));
  expect(queue.notes).toEqual([jobNote("j1"), jobNote("j2")]);
  store();
  await Promise.all(all);
  expect(queue.notes).toEqual([]);
});

test("what a page leaves is there until the next one has stored it, and a page that leaves nothing takes its own away", async () => {
  const store = memoryStore();
  leaveNotes([jobNote("j1")], store);
  const seen: number[] = [];
  const queue = new KeepingQueue(
    async () => ({ ...keeper, keepLeft: async () => void seen.push(leftNotes(store).size) }),
    store,
  );
  await queue.start();
  expect(seen).toEqual([1]);
  expect(leftNotes(store).size).toBe(0);
  leaveNotes([jobNote("j2")], store);
  leaveNotes([], store);
  expect(leftNotes(store).size).toBe(0);
});

test("what waits for the page to be drawn is done at once when the page goes, and once", async () => {
  const done: number[] = [];
  afterDrawing(() => done.push(1));
  actNow();
  expect(done).toEqual([1]);
  afterDrawing(() => done.push(2));
  await new Promise((resolve) => setTimeout(resolve, 5));
  actNow();
  expect(done).toEqual([1, 2]);
});
