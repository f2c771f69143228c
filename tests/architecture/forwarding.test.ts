import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

const SRC = join(import.meta.dirname, "../../src");

/** A loop that hands on to a chart what something else has found out. */
const FORWARDS = /\bfor \((?:const|let) .* of [^\n]*(?:\{\s*)?[\w.?]+\.send\((?:\w+|\{ type: \w+ [^}]*)\)?/;

/** Where facts reach a chart: the hand's own, and those of a change, whose two charts are its own. */
const MAY = ["dialing/hand/handSession.ts", "handover/change/changeInHand.ts"];

test("facts reach a chart in one way: nobody forwards them by hand", () => {
  const found = readdirSync(SRC, { recursive: true, encoding: "utf8" })
    .filter((file) => /\.tsx?$/.test(file) && FORWARDS.test(readFileSync(join(SRC, file), "utf8")))
    .map((file) => file.replaceAll("\\", "/"));
  expect(found.sort()).toEqual(MAY);
});

test.each([
  "for (const fact of facts) this.chart.send(fact);",
  "for (const fact of lock.turnBy(by, now)) {\n      chart.send(fact);",
  'for (const { kind } of this.log) {\n  this.chart.send({ type: kind === "try" ? "a" : "b" });',
])("a planted one is found: %s", (text) => {
  expect(text).toMatch(FORWARDS);
});
