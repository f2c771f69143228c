import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { PAGES } from "../../src/app/shell/address";

const ROOT = join(import.meta.dirname, "../..");
const read = (file: string) => readFileSync(join(ROOT, file), "utf8");

/** The views that a screen has in its table, as their addresses. */
const viewsOf = (page: string, screen: string) =>
  [...read(screen).matchAll(/\{ view: "([\w-]+)"/g)].map(([, view]) => `${page}?view=${view}`);

const PAGE_ADDRESSES = PAGES.map(({ path }) => path);
const HANDOVER = viewsOf("handover", "src/app/exercises/handover/HandoverScreen.tsx");
const LOGBOOK = viewsOf("logbook", "src/app/logbook/LogbookScreen.tsx");

/** Addresses of a list that a test goes through, from which some are missing. */
const missing = (list: string, addresses: readonly string[]) =>
  addresses.filter((one) => !new RegExp(`["\`](?:#/)?${one.replace("?", "\\?")}(?![\\w-])`).test(list));

test("there are screens to look for, and one that is not in a list is found", () => {
  expect([HANDOVER.length, LOGBOOK.length]).toEqual([5, 5]);
  expect(missing('["#/start", "handover?view=change-it"]', ["start", "handover?view=change"])).toEqual([
    "handover?view=change",
  ]);
});

test.each([
  ["tests/browser/pictures.spec.ts", [...PAGE_ADDRESSES, ...HANDOVER]],
  ["tests/browser/long/csp.spec.ts", [...PAGE_ADDRESSES, ...HANDOVER, ...LOGBOOK]],
  ["tests/browser/long/smallestType.spec.ts", [...PAGE_ADDRESSES, ...HANDOVER, ...LOGBOOK]],
])("%s goes through every screen", (file, addresses) => {
  expect(missing(read(file), addresses), "add these to its list").toEqual([]);
});
