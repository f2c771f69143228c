import { describe, expect, test } from "vitest";
import { jobStory } from "../../../src/app/results/jobSentences";
import type { FitResult, HandoverResult } from "../../../src/handover/run/checkRun";
import { JOB_COLUMNS } from "../../../src/records/csv/jobsCsv";
import { handoverEnd } from "../../../src/records/job/handoverEnd";
import { detailsOf } from "../../../src/records/job/jobDetails";
import type { JobRecord } from "../../../src/records/jobRecord";
import { jobParts } from "../../../src/records/xapi/tryStatements";
import { aJob } from "../../support/logbookRecords";

const RESULT: HandoverResult = {
  ...{
    isHandedOver: true,
    isClean: false,
    missing: [],
    steps: 20,
    undoneSteps: 0,
    duration_ms: 9000,
    isHandsOff: true,
  },
  faults: [{ code: "bad-fit-left", step: 20, at_ms: 9000, isUndone: false }],
};

/** A job of the logbook with such a fit; with none, of a lock that came on its door. */
function jobWith(fit?: FitResult): JobRecord {
  const { kind, missed, details } = handoverEnd({ ...RESULT, ...(fit && { fit }) });
  return JSON.parse(JSON.stringify({ ...aJob("job"), kind, missed, details, profileId: "three-wheel" }));
}

const BAD: FitResult = { isTogether: true, faults: ["strike-by-one-screw"], skipped: ["bolt"] };
const cellOf = (record: JobRecord, column: string) =>
  JOB_COLUMNS.find(({ name }) => name === column)?.cell({ record, person: undefined } as never);

describe("the fit of a handover in the logbook", () => {
  test("is kept by codes, told in words, and goes where what was missed goes", () => {
    const job = jobWith(BAD);
    expect(detailsOf(job)?.details).toMatchObject({ fit: BAD });
    expect(job.missed).toEqual(["bad-fit-left", "strike-by-one-screw"]);
    expect(jobStory(job).points).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^The strike hangs by one screw\. ./),
        "Checks you did not make on this fit: work the bolt in the strike.",
      ]),
    );
    expect(cellOf(job, "missed")).toBe("bad-fit-left; strike-by-one-screw");
    expect(JSON.stringify(jobParts(job))).toContain("strike-by-one-screw");
  });

  test.each([
    { fit: { isTogether: true, faults: [], skipped: [] }, told: "You made every check." },
    { fit: { isTogether: false, faults: [], skipped: ["bolt"] }, told: "The lock is in parts." },
  ] as const)("$fit is told by: $told", ({ fit, told }) => {
    expect(jobStory(jobWith(fit)).points).toContain(told);
  });

  test("a job from before, or of a lock that came on its door, says nothing of a fit", () => {
    const job = jobWith();
    expect(detailsOf(job)?.details).not.toHaveProperty("fit");
    expect(jobStory(job).points.join(" ")).not.toMatch(/every check|on this fit|in parts/);
  });
});
