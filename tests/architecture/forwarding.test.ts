import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

const SRC = join(import.meta.dirname, "../../src");

/** A chart told of what something else has found out: whatever is sent is not made there, or made in a loop over news. */
const FORWARDS = [
  /\.send\(\s*[^{\s)]/,
  /\.send\b(?!\()/,
  /\.send\(\s*\{\s*\.\.\./,
  /\brun\.take\(/,
  /\bfor \((?:const|let) .* of [^\n]*(?:\{\s*)?[\w.?]+\.send\(\{ type: \w+ [^}]*/,
];

/** Where facts reach a chart, and why. */
const MAY = {
  "app/exercises/handover/run/session/handoverSession.ts":
    "a door's chart takes what its lock did among all other acts: each is asked whether it can be, timed, and kept with what the lock says",
  "app/school/live/liveLink.ts": "sends over the network, and has no chart",
  "app/sittings/session/keptSitting.ts": "the one way into the chart of a sitting, which keeps what it sends",
  "dialing/hand/handSession.ts": "the hand tells the chart what came of it",
  "handover/change/changeInHand.ts": "a change tells its own chart",
  "handover/run/checkRun.ts": "plays a recorded handover again, which has no hand",
};

const forwards = (text: string) => FORWARDS.some((one) => one.test(text));

test("facts reach a chart in one way: nobody forwards them by hand", () => {
  const found = readdirSync(SRC, { recursive: true, encoding: "utf8" })
    // The server sends answers, and has no charts.
    .filter(
      (file) => /\.tsx?$/.test(file) && !file.startsWith("server") && forwards(readFileSync(join(SRC, file), "utf8")),
    )
    .map((file) => file.replaceAll("\\", "/"));
  expect(found.sort()).toEqual(Object.keys(MAY));
});

test.each([
  ["a change", "handover/change/changeInHand.ts", /\.send\b/g],
  ["a door", "app/exercises/handover/run/session/handoverSession.ts", /\brun\.take\b/g],
])("%s has one chart to tell, and tells it in one place", (_what, file, tells) => {
  expect(readFileSync(join(SRC, file), "utf8").match(tells)).toHaveLength(1);
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
  "for (const fact of facts) chart.send({ ...fact, at });",
  "for (const happening of happenings) this.run.take(lockEvent(happening));",
])("a planted one is found: %s", (text) => {
  expect(forwards(text)).toBe(true);
});

test.each(['this.chart.send({ type: "ring.clamped" });', 'chart?.send({ type: isOff ? "set" : "released" });'])(
  "this is none: %s",
  (text) => {
    expect(forwards(text)).toBe(false);
  },
);
