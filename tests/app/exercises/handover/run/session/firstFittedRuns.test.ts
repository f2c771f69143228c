import { describe, expect, test } from "vitest";
import { HandoverSession } from "../../../../../../src/app/exercises/handover/run/session/handoverSession";
import { readKept } from "../../../../../../src/app/exercises/handover/run/session/keptRun";
import { jobStory } from "../../../../../../src/app/results/jobSentences";
import { checkRun } from "../../../../../../src/handover/run/checkRun";
import { parseRun } from "../../../../../../src/handover/run/recordedRun";
import { checkHandoverRecord } from "../../../../../../src/records/handover/checkHandoverRecord";
import { parseHandoverRecord } from "../../../../../../src/records/handover/handoverRecord";
import { recordHash } from "../../../../../../src/records/hashedRecord";
import { detailsOf } from "../../../../../../src/records/job/jobDetails";
import { jobSchema } from "../../../../../../src/records/jobRecord";
import { jobIsRight } from "../../../../../../src/records/jobRight";
import jobs from "../../../../../fixtures/fitted-handover/jobs.json" with { type: "json" };
import records from "../../../../../fixtures/fitted-handover/records.json" with { type: "json" };
import runs from "../../../../../fixtures/fitted-handover/runs.json" with { type: "json" };
import texts from "../../../../../fixtures/fitted-handover/texts.json" with { type: "json" };

const PROFILES = ["three-wheel", "dial-encoder"] as const;

/** The session that goes on from a kept text. */
function resumed(text: unknown): HandoverSession {
  const { marked, unread } = readKept(text);
  if (marked === null) throw new Error("it is not read");
  expect(unread).toBeNull();
  const { kept } = marked;
  return new HandoverSession({ ...kept.run, isToFit: true }, kept, () => {});
}

describe.each(PROFILES)("a handover of the first code that fitted its lock, %s", (id) => {
  test("goes on half fitted, every part where it was, its check made", () => {
    const text = texts[`${id}, half fitted`];
    const { tray, run } = resumed(text);
    expect(tray?.acts).toEqual(text.underWay.fitting.acts);
    expect(tray?.log.map(({ kind }) => kind)).toEqual(text.underWay.fitting.checks);
    expect([tray?.acts.length, run.situation.fit]).toEqual([8, "apart"]);
  });

  test("goes on to its signature, and its lock is the one that was fitted", () => {
    const session = resumed(texts[`${id}, before the signature`]);
    expect(session.run.situation.fit).toBe("faultless");
    session.act({ type: "duty.signed" }, 1000);
    expect([session.run.isHandedOver, session.told?.isHindered]).toEqual([true, false]);
  });

  test("is checked from its file as it was", () => {
    const result = checkRun(parseRun(runs[id]));
    expect(result).toMatchObject({ isHandedOver: true, missing: [], fit: { isTogether: true, faults: [] } });
  });

  test("has a record that checks", () => {
    const record = records[id];
    const { problems } = checkHandoverRecord({ sha256: recordHash(parseHandoverRecord(record)), record });
    expect(problems).toEqual([]);
  });

  test("is a job that is read, told and judged as it was", () => {
    const job = jobSchema.parse(jobs.find(({ profileId }) => profileId === id));
    expect(detailsOf(job)).toMatchObject({ kind: "handover" });
    expect(jobIsRight(job)).toBe(job.isRight);
    expect(jobStory(job).sentence).not.toBe("");
  });
});
