import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { MASTERY_RULE } from "../../../src/records/masteryRule";
import type { SittingRecord } from "../../../src/records/records";
import { tryId } from "../../../src/records/tryOfSitting";
import type { Logbook } from "../../../src/store/logbook";
import type { LogbookWrite } from "../../../src/store/logbookWrite";
import { recordsOfKind } from "../../../src/store/wholeLogbook";
import { aJob, anAttempt, aPerson, emptyHost, NOON, SHORT_TRACE } from "../../support/logbookRecords";

let keepFor: Keep["keepFor"];
let keepMissing: Keep["keepMissing"];
let logbook: Logbook;

beforeAll(async () => {
  for (const [name, value] of Object.entries(emptyHost())) vi.stubGlobal(name, value);
  // A page opens its logbook once: this one has a page of its own.
  vi.resetModules();
  ({ keepFor, keepMissing } = await import("../../../src/app/keeping/keep"));
  const { currentLogbook } = await import("../../../src/app/keeping/currentLogbook");
  ({ logbook } = await currentLogbook());
});
afterAll(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

type Keep = typeof import("../../../src/app/keeping/keep");

const ENOUGH = MASTERY_RULE.minimumAttempts;

const sitting = (id: string, personId: string, state: SittingRecord["state"]): LogbookWrite => ({
  kind: "sittings",
  record: { id, personId, createdAt: NOON, updatedAt: NOON, startedAt: NOON, title: "Friday", state, body: {} },
});

const tryOf = (sittingId: string, personId: string, k: number): LogbookWrite => {
  const frame = { personId, sittingId, startedAt: NOON + k };
  return k % 2 === 0
    ? { kind: "attempts", record: anAttempt(tryId(sittingId, k), frame), trace: SHORT_TRACE }
    : { kind: "jobs", record: aJob(tryId(sittingId, k), frame) };
};

const shownBy = async (personId: string) => {
  const all = await recordsOfKind(logbook, "declarations");
  return all
    .filter((one) => one.personId === personId)
    .map(({ exercise }) => exercise)
    .sort();
};

const known = (id: string) => logbook.save({ kind: "people", record: aPerson(id) });

test("skills shown in a sitting are declared when it has ended, not before", async () => {
  await known("lintva");
  for (let k = 0; k < 2 * ENOUGH; k++) {
    await keepFor("lintva", (id) => [sitting("friday", id, "running"), tryOf("friday", id, k)]);
  }
  expect(await shownBy("lintva")).toEqual([]);
  await keepFor("lintva", (id) => [sitting("friday", id, "finished")]);
  expect(await shownBy("lintva")).toEqual(["change", "open"]);
});

test("a sitting of which nothing shows a skill declares none", async () => {
  await known("orsel");
  for (let k = 0; k < ENOUGH; k++) await keepFor("orsel", (id) => [tryOf("short", id, k)]);
  await keepFor("orsel", (id) => [sitting("short", id, "broken-off")]);
  expect(await shownBy("orsel")).toEqual([]);
});

test("tries that come after the end of their sitting declare what they show", async () => {
  await known("wenka");
  await keepFor("wenka", (id) => [sitting("killed", id, "finished")]);
  await keepMissing("wenka", (id) => Array.from({ length: 2 * ENOUGH }, (_, k) => tryOf("killed", id, k)));
  expect(await shownBy("wenka")).toEqual(["change", "open"]);
});
