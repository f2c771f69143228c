import { FAULT_NAMES } from "../../dialing/faultName";
import { handsOfClass, jobsOfHand, ofHand } from "../../progress/oneHand";
import { practiceOfJob } from "../../progress/practice";
import type { Hand } from "../../realdial/sources/handOf";
import type { AttemptRecord } from "../../records/attemptRecord";
import type { JobRecord } from "../../records/jobRecord";
import type { LogbookContents } from "../../records/logbookContents";
import type { SittingRecord } from "../../records/records";
import { type Skill, skillKey } from "../../records/skill";
import { dayText } from "../parts/moments";
import type { TableModel } from "../pictures/charts/figureModel";
import { attemptRowOf } from "../results/attemptRows";
import { jobRowOf } from "../results/jobRows";
import { missedWord } from "../results/jobWords";
import { zeroingTable } from "../results/zeroingTable";
import type { DeskSitting } from "./sittingChecks";

/** What is known of one person, in tables; null where there is nothing of a kind. */
export interface PersonTables {
  readonly faults: TableModel | null;
  readonly attempts: TableModel | null;
  /** What was missed at jobs. */
  readonly missed: TableModel | null;
  readonly jobs: TableModel | null;
  readonly zeroings: TableModel | null;
  readonly sittings: readonly SittingRecord[];
}

/** Attempts, or jobs, that are listed. */
const MOST = 10;

/** Faults by kind and by the number they happened at, most frequent first. */
function faultsTable(attempts: readonly AttemptRecord[]): TableModel | null {
  const faults = attempts.flatMap((one) => one.faults);
  if (faults.length === 0) return null;
  const numbers = Array.from({ length: Math.max(...faults.map(({ number }) => number)) }, (_, k) => k + 1);
  const count = (code: string, number?: number) =>
    faults.filter((one) => one.code === code && (number === undefined || one.number === number)).length;
  const codes = [...new Set(faults.map(({ code }) => code))].sort((a, b) => count(b) - count(a));
  return {
    caption: `Faults in ${attempts.length} attempts`,
    head: ["fault", ...numbers.map((number) => `number ${number}`), "total"],
    rows: codes.map((code) => [
      FAULT_NAMES[code],
      ...numbers.map((number) => `${count(code, number) || "–"}`),
      `${count(code)}`,
    ]),
  };
}

/** The latest of many, the last one first. */
function latestTable<One>(
  all: readonly One[],
  what: string,
  head: readonly string[],
  rowOf: (one: One) => readonly string[],
): TableModel | null {
  if (all.length === 0) return null;
  const rows = all.slice(-MOST).reverse().map(rowOf);
  return { caption: `Latest ${rows.length} of ${all.length} ${what}`, head, rows };
}

const ATTEMPTS_HEAD = ["when", "lock", "help", "result", "faults", "stop errors", "time"];

function attemptCells(attempt: AttemptRecord): string[] {
  const { day, clock, lock, help, result, faults, stops, time } = attemptRowOf(attempt);
  return [`${day} ${clock}`, lock, help, result, faults, stops, time];
}

function missedTable(jobs: readonly JobRecord[]): TableModel | null {
  const missed = jobs.flatMap((one) => one.missed);
  if (missed.length === 0) return null;
  const count = (code: string) => missed.filter((one) => one === code).length;
  return {
    caption: `What was missed, in ${jobs.length} jobs`,
    head: ["missed", "total"],
    rows: [...new Set(missed)].sort((a, b) => count(b) - count(a)).map((code) => [missedWord(code), `${count(code)}`]),
  };
}

const JOBS_HEAD = ["when", "job", "lock", "help", "result", "what was missed", "time"];

function jobCells(record: JobRecord): string[] {
  const { day, clock, job, lock, help, result, missed, time } = jobRowOf(record);
  return [`${day} ${clock}`, job, lock, help, result, missed, time];
}

const oldestFirst = (one: { readonly startedAt: number }, other: { readonly startedAt: number }) =>
  one.startedAt - other.startedAt;

/**
 * What a class knows of one person.
 *
 * @param skill - attempts and jobs at this skill alone; null for all. Sittings and zeroings are told whole
 * @param hand - that turned the dial of attempts and jobs; that of the class where left out (`handsOfClass`)
 */
export function personTables(
  { records }: LogbookContents,
  personId: string,
  skill: Skill | null,
  hand: Hand = handsOfClass(records.attempts)[0],
): PersonTables {
  const own = ofHand(records.attempts, hand).filter((one) => one.personId === personId);
  const attempts = own.filter((one) => skill === null || skillKey(one) === skillKey(skill)).sort(oldestFirst);
  const jobs = jobsOfHand(records.jobs, hand)
    .filter((one) => one.personId === personId)
    .filter((one) => skill === null || skillKey(practiceOfJob(one)) === skillKey(skill))
    .sort(oldestFirst);
  const zeroings = records.zeroings.filter((one) => one.personId === personId);
  return {
    faults: faultsTable(attempts),
    attempts: latestTable(attempts, "attempts", ATTEMPTS_HEAD, attemptCells),
    missed: missedTable(jobs),
    jobs: latestTable(jobs, "jobs", JOBS_HEAD, jobCells),
    zeroings: zeroings.length === 0 ? null : zeroingTable(zeroings),
    sittings: records.sittings.filter((one) => one.personId === personId).sort((a, b) => b.startedAt - a.startedAt),
  };
}

/** Before a record is checked nothing is said of it. */
const UNCHECKED = { title: "…", result: "…", sheet: "…", pauses: "…", reloads: "…", record: "…" } as const;

/**
 * Sittings as a table, latest first: what their checked records say.
 *
 * @param checks - what checking each record came to, by the sitting's id; left out before it is known
 */
export function sittingsTable(
  sittings: readonly SittingRecord[],
  checks: ReadonlyMap<string, DeskSitting>,
): TableModel {
  return {
    caption: "Sittings, latest first; a practice result is not a certificate",
    head: ["when", "sheet", "its fingerprint", "result", "pauses", "reloads", "record"],
    rows: sittings.map(({ id, startedAt }) => {
      const { title, result, sheet, pauses, reloads, record, ...checked } = checks.get(id) ?? UNCHECKED;
      const at = "startedAt" in checked && checked.startedAt !== null ? Date.parse(checked.startedAt) : startedAt;
      return [dayText(at), title, sheet, result, pauses, reloads, record];
    }),
  };
}
