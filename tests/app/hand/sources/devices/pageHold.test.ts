import { afterEach, expect, test, vi } from "vitest";
import { holdForPage } from "../../../../../src/app/hand/sources/devices/pageHold";

afterEach(() => void vi.unstubAllGlobals());

/** Locks of one browser, as far as they are used: one holder; who asks "if available" is not kept waiting, others wait. */
function stubLocks() {
  let holding: Promise<void> | null = null;
  const request = async (_name: string, options: LockOptions, take: (lock: Lock | null) => Promise<void>) => {
    if (holding !== null && options.ifAvailable) return take(null);
    await holding;
    holding = take({} as Lock);
    await holding;
    holding = null;
  };
  vi.stubGlobal("navigator", { locks: { request } });
}

test("one page has the dial; another is told at once that it has not, until the first lets go", async () => {
  stubLocks();
  const release = await holdForPage();
  expect(release).not.toBeNull();
  expect(await holdForPage()).toBeNull();
  await release?.();
  expect(await holdForPage()).not.toBeNull();
});

test("a browser without locks lets every page have it", async () => {
  vi.stubGlobal("navigator", {});
  expect([await holdForPage(), await holdForPage()]).not.toContain(null);
});

test("a browser that refuses the lock is heard", async () => {
  vi.stubGlobal("navigator", { locks: { request: () => Promise.reject(new Error("no locks here")) } });
  await expect(holdForPage()).rejects.toThrow("no locks here");
});
