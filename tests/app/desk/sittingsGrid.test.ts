import { expect, test } from "vitest";
import { sittingChecks } from "../../../src/app/desk/sittingChecks";
import { sittingsGrid, sittingsSentence } from "../../../src/app/desk/sittingsGrid";
import { keptSitting } from "../../support/keptRecord";
import { aPerson } from "../../support/logbookRecords";
import { dialingStation, testSheet } from "../../support/testSheet";
import { triesRight } from "../../support/testTries";

const sheet = (firstTime: number) =>
  testSheet({ stations: [dialingStation({ repetitions: 5, passMarks: { firstTime } })] });

test("people stand by sheets, the latest sitting in a cell; a sheet with eased marks has a column of its own", async () => {
  const later = "2026-11-26T08:00:00.000Z";
  const failed = keptSitting("early", { sheet: sheet(4), tries: triesRight(1, 5) });
  const sittings = [
    keptSitting("late", { sheet: sheet(4), startedAt: later }),
    // Beside its record it says that it passed.
    { ...failed, verdict: "passed" as const },
    { ...keptSitting("eased", { sheet: sheet(1), tries: triesRight(1, 5) }), personId: "mibsy" },
  ];
  const people = [aPerson("tavro", { name: "Tavro" }), aPerson("mibsy", { name: "Mibsy" })];
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const checks = await sittingChecks(sittings, {
    appVersion: "0.1.0",
    traces: new Map(),
    names: new Map(),
    sheets: [],
  });
  const { head, rows } = sittingsGrid(people, names, sittings, checks);
  expect(head).toHaveLength(3);
  expect(new Set(head.slice(1)).size).toBe(2);
  for (const one of head.slice(1)) expect(one).toMatch(/ \([0-9A-F]{4}-[0-9A-F]{4}\)$/);
  expect(rows.map(([name]) => name)).toEqual(["Mibsy", "Tavro"]);
  const [mibsy, tavro] = rows.map((cells) => cells.slice(1).filter((cell) => cell !== "–"));
  expect(mibsy).toEqual([expect.stringMatching(/^passed, Nov 2\d; record /)]);
  expect(tavro).toEqual([expect.stringMatching(/^passed, Nov 26; record .*; latest of 2$/)]);
  expect(sittingsSentence([...checks.values()])).toBe("3 sittings: 2 passed, 1 not passed, 0 not decided.");
});
