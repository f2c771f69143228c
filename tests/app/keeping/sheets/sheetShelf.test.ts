import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { type SheetKeeper, SheetShelf } from "../../../../src/app/keeping/sheets/sheetShelf";
import { blankSheet } from "../../../../src/app/sheets/editor/newSheet";
import type { SheetRecord } from "../../../../src/records/records";

const PATIENCE_MS = 1000;

function world() {
  let count = 0;
  return { now: () => 1000 + count, newId: () => `id${++count}` };
}

function memory(records: readonly SheetRecord[] = []) {
  const kept = new Map(records.map((record) => [record.id, record]));
  const keeper: SheetKeeper = {
    all: async () => [...kept.values()],
    keep: async (record) => void kept.set(record.id, record),
    drop: async (id) => void kept.delete(id),
    problem: () => null,
  };
  return { kept, keeper };
}

const settle = () => vi.advanceTimersByTimeAsync(PATIENCE_MS);
beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe("SheetShelf", () => {
  it("has what was kept, keeps what is added and changed, and says when it is done", async () => {
    const { kept, keeper } = memory([{ id: "old", title: "Old", createdAt: 1, updatedAt: 1, body: {} }]);
    const shelf = new SheetShelf(Promise.resolve(keeper), world());
    const id = shelf.add(blankSheet());
    await settle();
    expect(shelf.own.map(({ title }) => title)).toEqual(["New sheet", "Old"]);
    shelf.change(id, { ...blankSheet(), title: "" });
    expect(shelf.isKeeping).toBe(true);
    await settle();
    expect(shelf.isKeeping).toBe(false);
    expect(kept.get(id)?.title).toBe("Untitled");
  });

  it("deletes, and brings back", async () => {
    const { kept, keeper } = memory();
    const shelf = new SheetShelf(Promise.resolve(keeper), world());
    await settle();
    const id = shelf.add(blankSheet());
    await settle();
    await shelf.remove(id);
    expect([shelf.own.length, kept.size, shelf.deleted?.id]).toEqual([0, 0, id]);
    shelf.restore();
    await settle();
    expect([shelf.own.length, kept.size, shelf.deleted]).toEqual([1, 1, null]);
  });

  it("does not bring back from the logbook what was deleted while it opened", async () => {
    const { keeper } = memory([{ id: "old", title: "Old", createdAt: 1, updatedAt: 1, body: {} }]);
    const shelf = new SheetShelf(Promise.resolve(keeper), world());
    await settle();
    await shelf.remove("old");
    expect(shelf.own).toEqual([]);
  });

  it("works in memory without a logbook, and says so", async () => {
    const shelf = new SheetShelf(Promise.reject(new Error("none")), world());
    const id = shelf.add(blankSheet());
    await settle();
    shelf.change(id, { ...blankSheet(), title: "Mine" });
    await settle();
    expect(shelf.own.map(({ title }) => title)).toEqual(["Mine"]);
    expect(shelf.problem).toMatch(/^Your sheets cannot be saved/);
  });

  it("tells in words when keeping fails, and goes on", async () => {
    const { keeper } = memory();
    const broken = { ...keeper, keep: () => Promise.reject(new Error("There is no room left.")) };
    const shelf = new SheetShelf(Promise.resolve(broken), world());
    shelf.add(blankSheet());
    await settle();
    expect(shelf.problem).toBe("There is no room left.");
    expect(shelf.own).toHaveLength(1);
  });
});
