import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

const SRC = join(import.meta.dirname, "../../src");

/** A chart told of what something else has found out: whatever is sent is not made there, or made in a loop over news. */
const FORWARDS = [
  /\.send\(\s*[^{\s)]/,
  /\.send\b(?!\()/,
  /\bfor \((?:const|let) .* of [^\n]*(?:\{\s*)?[\w.?]+\.send\(\{ type: \w+ [^}]*/,
];

/** Where facts reach a chart: the hand tells it, a change tells its own; and the one door of a sitting, which keeps what it sends. */
const MAY = ["app/sittings/session/keptSitting.ts", "dialing/hand/handSession.ts", "handover/change/changeInHand.ts"];

const forwards = (text: string) => FORWARDS.some((one) => one.test(text));

test("facts reach a chart in one way: nobody forwards them by hand", () => {
  const found = readdirSync(SRC, { recursive: true, encoding: "utf8" })
    .filter((file) => /\.tsx?$/.test(file) && forwards(readFileSync(join(SRC, file), "utf8")))
    .map((file) => file.replaceAll("\\", "/"));
  expect(found.sort()).toEqual(MAY);
});

test("a change has one chart to tell, and tells it in one place", () => {
  const change = readFileSync(join(SRC, "handover/change/changeInHand.ts"), "utf8");
  expect(change.match(/\.send\b/g)).toHaveLength(1);
});

test.each([
  "for (const fact of facts) this.chart.send(fact);",
  "for (const fact of lock.turnBy(by, now)) {\n      chart.send(fact);",
  'for (const { kind } of this.log) {\n  this.chart.send({ type: kind === "try" ? "a" : "b" });',
  "for (const fact of dialing) this.dialer.send(fact);",
  "for (const fact of hand.begunWith ?? []) dialer.send(fact);",
  "const fact = takeReading(watched, side, rules, now);\n    this.chart.send(fact);",
  "this.chart.send(\n      takeReading(watched, side, rules, now),\n    );",
  "facts.forEach((fact) => chart?.send(fact));",
  "facts.forEach(chart.send);",
])("a planted one is found: %s", (text) => {
  expect(forwards(text)).toBe(true);
});

test.each(['this.chart.send({ type: "ring.clamped" });', 'chart?.send({ type: isOff ? "set" : "released" });'])(
  "this is none: %s",
  (text) => {
    expect(forwards(text)).toBe(false);
  },
);
