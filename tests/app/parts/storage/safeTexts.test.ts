import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";

const KEY = "gatefall.fitting.three-wheel";

/** The page's own texts, which may be full or refuse all. */
class Texts {
  readonly texts = new Map<string, string>();
  state: "roomy" | "full" | "forbidden" = "roomy";

  private asked(): void {
    if (this.state === "forbidden") throw new DOMException("forbidden", "SecurityError");
  }
  getItem(key: string): string | null {
    this.asked();
    return this.texts.get(key) ?? null;
  }
  setItem(key: string, text: string): void {
    this.asked();
    if (this.state === "full") throw new DOMException("full", "QuotaExceededError");
    this.texts.set(key, text);
  }
  removeItem(key: string): void {
    this.asked();
    this.texts.delete(key);
  }
  key(index: number): string | null {
    return [...this.texts.keys()][index] ?? null;
  }
  get length(): number {
    this.asked();
    return this.texts.size;
  }
}

let own = new Texts();
beforeEach(() => {
  own = new Texts();
  vi.stubGlobal("localStorage", own);
  vi.stubGlobal("indexedDB", new IDBFactory());
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

/** A page that was just opened: it remembers nothing of one before. */
async function openedPage() {
  vi.resetModules();
  const page = await import("../../../../src/app/parts/storage/safeTexts");
  await page.recallTexts();
  return page;
}

/** The page's texts as they were some seconds ago. */
const killed = (before: ReadonlyMap<string, string>) => {
  own.texts.clear();
  for (const [key, text] of before) own.texts.set(key, text);
};

describe("a text that outlasts its page", () => {
  test("is there after a reload, at once", async () => {
    const page = await openedPage();
    void page.keepText(KEY, "one");
    expect(own.texts.get(KEY)).toBe("one");
    expect((await openedPage()).safeText(KEY)).toBe("one");
  });

  test("is there as it was last after a kill that lost the page's own texts, or the last of them", async () => {
    const page = await openedPage();
    await page.keepText(KEY, "one");
    const stale = new Map(own.texts);
    await page.keepText(KEY, "two");
    killed(stale);
    expect((await openedPage()).safeText(KEY)).toBe("two");
    killed(new Map());
    const again = await openedPage();
    expect([again.safeText(KEY), own.texts.get(KEY)]).toEqual(["two", "two"]);
  });

  test("that was taken away stays away after a kill that brings it back", async () => {
    const page = await openedPage();
    await page.keepText(KEY, "one");
    const stale = new Map(own.texts);
    await page.keepText(KEY, null);
    killed(stale);
    const again = await openedPage();
    expect([again.safeText(KEY), own.texts.has(KEY)]).toEqual([null, false]);
  });

  test("is the page's own where that is ahead: the database did not get the last one", async () => {
    const page = await openedPage();
    await page.keepText(KEY, "one");
    vi.stubGlobal("indexedDB", undefined);
    const later = await openedPage();
    expect(await later.keepText(KEY, "two")).toBe(true);
    expect((await openedPage()).safeText(KEY)).toBe("two");
  });

  test.each(["full", "forbidden"] as const)("is in the database alone where the page's own are %s", async (state) => {
    const page = await openedPage();
    await page.keepText(KEY, "one");
    own.state = state;
    expect(await page.keepText(KEY, "two")).toBe(true);
    expect([page.safeText(KEY), page.safeKeys("gatefall.fitting.")]).toEqual(["two", [KEY]]);
    const again = await openedPage();
    expect([again.safeText(KEY), again.safeKeys("gatefall.fitting.")]).toEqual(["two", [KEY]]);
    own.state = "roomy";
    expect((await openedPage()).safeText(KEY)).toBe("two");
  });

  test("lasts as long as the page where nothing stores it, and that is told", async () => {
    own.state = "full";
    vi.stubGlobal("indexedDB", undefined);
    const page = await openedPage();
    expect(await page.keepText(KEY, "one")).toBe(false);
    expect(page.safeText(KEY)).toBe("one");
    expect((await openedPage()).safeText(KEY)).toBeNull();
  });

  test.each(["not a number", "1e999", "-3", "", "9007199254740993"])(
    "with a count of %j is counted on",
    async (count) => {
      const page = await openedPage();
      await page.keepText(KEY, "one");
      own.texts.set(`gatefall.count.${KEY}`, count);
      await page.keepText(KEY, "two");
      own.texts.clear();
      expect((await openedPage()).safeText(KEY)).toBe("two");
    },
  );

  test("is counted on by another tab, whose later text wins", async () => {
    const [one, other] = [await openedPage(), await openedPage()];
    await one.keepText(KEY, "one");
    await one.keepText(KEY, "one again");
    await other.keepText(KEY, "other");
    own.texts.clear();
    expect((await openedPage()).safeText(KEY)).toBe("other");
  });
});
