import { afterEach, expect, test, vi } from "vitest";
import { PageHold } from "../../../../../src/app/hand/sources/devices/pageHold";

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

const wanted = () => true;

test("one page has the dial; another is told at once that it has not, until the first lets go", async () => {
  stubLocks();
  const [one, other] = [new PageHold(), new PageHold()];
  expect(await one.take(wanted)).toBe(true);
  expect(await other.take(wanted)).toBe(false);
  one.letGo();
  await vi.waitFor(async () => expect(await other.take(wanted)).toBe(true));
});

test("a page is not in its own way: what it does not want any more is let go before it asks again", async () => {
  stubLocks();
  const hold = new PageHold();
  let isWanted = true;
  const first = hold.take(() => isWanted);
  isWanted = false;
  hold.letGo();
  expect(await Promise.all([first, hold.take(wanted)])).toEqual([false, true]);
  hold.letGo();
  expect(await hold.take(wanted)).toBe(true);
});

test.each([
  ["without locks", {}],
  ["that refuses them", { locks: { request: () => Promise.reject(new Error("no locks here")) } }],
])("a browser %s lets every page have it", async (_, navigator) => {
  vi.stubGlobal("navigator", navigator);
  const [one, other] = [new PageHold(), new PageHold()];
  expect([await one.take(wanted), await other.take(wanted)]).toEqual([true, true]);
  one.letGo();
  expect(await one.take(wanted)).toBe(true);
});
