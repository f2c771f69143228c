import { csvParse } from "d3-dsv";
import { describe, expect, test } from "vitest";
import { suggestionRow } from "../../src/app/logbook/progress/suggestionRows";
import { classTable } from "../../src/progress/classTable";
import { classCsv } from "../../src/progress/csv/classCsv";
import { whatNext } from "../../src/progress/whatNext";
import { jobsCsv } from "../../src/records/csv/jobsCsv";
import { JOB_KINDS, type JobKind, type JobRecord } from "../../src/records/jobRecord";
import type { LogbookContents } from "../../src/records/logbookContents";
import { xapiStatements } from "../../src/records/xapi/xapiStatements";
import { aJob, aPerson, contents, NOON } from "../support/logbookRecords";

const DAY = 86_400_000;
const bookOf = (jobs: readonly JobRecord[]): LogbookContents => {
  const book = contents([aPerson("tavro")]);
  return { ...book, records: { ...book.records, jobs: [...jobs] } };
};

/** Each kind of job, a code that can be missed at it, and where one does it again. */
const KINDS: Readonly<Record<JobKind, readonly [missed: string, place: string, title: RegExp]>> = {
  change: ["number-set-off", "#/handover?view=change&", /changing the combination$/],
  trouble: ["not-named", "#/handover?view=trouble&", /finding a defect$/],
  handover: ["way-out", "#/handover?view=run&", /handing over$/],
  fitting: ["ring-off-center", "#/fitting?", /fitting a dial$/],
  service: ["door-not-held", "#/fitting?view=service&", /a service visit$/],
  inspection: ["overlooked-end-play", "#/fitting?view=find&", /judging a fit$/],
};

describe.each(JOB_KINDS)("%s", (kind) => {
  const [code, place, title] = KINDS[kind];
  const right = Array.from({ length: 12 }, (_, k) => aJob(`j${k}`, { kind, startedAt: NOON + k }));
  const wrong = aJob("wrong", { kind, isRight: false, missed: [code], startedAt: NOON + 99 });

  test("is a column of the class table, with readiness, and a row of its CSV", () => {
    const table = classTable([bookOf(right)]);
    expect(table.skills).toEqual([{ profileId: "three-wheel", exercise: kind }]);
    expect(table.rows[0]?.cells[0]).toMatchObject({
      attempts: 12,
      openings: { opened: 12 },
      mastery: { isReady: true },
    });
    expect(classTable([bookOf([...right.slice(1), wrong])]).rows[0]?.isReady).toBe(false);
    expect([...csvParse(classCsv(table))]).toMatchObject([
      { exercise: kind, attempts: "12", opened: "12", ready: "1" },
    ]);
  });

  test("is to be repeated where the last one was not right, on its own page, with its help", () => {
    const [first] = whatNext([], [], NOON, 0, [...right.slice(0, 3), wrong]).suggestions;
    expect(first).toMatchObject({ kind: "redo-misses", skill: { exercise: kind } });
    if (first === undefined) throw new Error("nothing is suggested");
    const row = suggestionRow(first);
    expect(row.title).toMatch(title);
    expect(row.links.map(({ address }) => address)).toEqual([`${place}profile=three-wheel&help=${first.help}`]);
  });

  test("is due again after months", () => {
    const { suggestions } = whatNext([], [], NOON + 80 * DAY, 0, right);
    expect(suggestions.map((one) => [one.kind, one.skill.exercise])).toEqual([["refresh", kind]]);
  });

  test("is a row of the CSV of jobs, and a statement of xAPI", () => {
    const book = bookOf([wrong]);
    expect([...csvParse(jobsCsv(book))]).toMatchObject([{ job: kind, right: "0", missed: code }]);
    const [statement] = xapiStatements(book, "0.1.0");
    expect(statement?.object.id).toMatch(new RegExp(`/activities/three-wheel/${kind}$`));
    expect(statement?.result.success).toBe(false);
    expect(Object.values(statement?.result.extensions ?? {})).toContainEqual([code]);
  });
});
