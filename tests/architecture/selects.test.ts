import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

const APP = join(import.meta.dirname, "../../src/app");

/** What a session reads from its chart for those who have no screen; a screen that reads it is redrawn by luck. */
const OF_CHART = "state|memory|proofs";
const SESSION = "(?:session|one|change|zeroing|prove|play|bench)(?:\\.(?:session|zeroing|change))?";
const READS = new RegExp(
  `\\b${SESSION}\\.(?:${OF_CHART})\\b` +
    `|\\{[^{}=]*\\b(?:${OF_CHART})\\b[^{}=]*\\} = (?:useStore\\()?${SESSION}\\)?;` +
    `|\\.getSnapshot\\(\\)`,
);

test("screens select from the charts: none reads one through its session", () => {
  const found = readdirSync(APP, { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".tsx"))
    .filter((file) => READS.test(readFileSync(join(APP, file), "utf8")));
  expect(found).toEqual([]);
});

test("the chart of a session has one name", () => {
  const found = readdirSync(APP, { recursive: true, encoding: "utf8" }).filter(
    (file) => /\.tsx?$/.test(file) && /\bactor\b/.test(readFileSync(join(APP, file), "utf8")),
  );
  expect(found).toEqual([]);
});

test.each([
  "const { state } = useStore(session);",
  "const { task, state } = session;",
  "const { state, lock } = session.zeroing;",
  "disabled={session.memory.isTryBegun}",
  "session.chart.getSnapshot().value",
])("a planted one is found: %s", (text) => {
  expect(text).toMatch(READS);
});

test.each(["const state = useSelector(session.chart, stateOf);", "const { task } = session;"])(
  "this is none: %s",
  (text) => {
    expect(text).not.toMatch(READS);
  },
);
