import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { FITTING_WORK, fittingKey, lastFitted } from "../../../../src/app/exercises/fitting/kept/keptFitting";
import { resumedFitting } from "../../../../src/app/exercises/fitting/resumedFitting";
import { firstVisit } from "../../../../src/app/exercises/service/keptVisit";
import { recallWork } from "../../../../src/app/parts/storage/keptWork";
import { jobStory } from "../../../../src/app/results/jobSentences";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { detailsOf } from "../../../../src/records/job/jobDetails";
import { jobSchema } from "../../../../src/records/jobRecord";
import { jobIsRight } from "../../../../src/records/jobRight";
import { visitFaults } from "../../../../src/service/visitFault";
import { seededChance } from "../../../../src/statistics/chance";
import jobs from "../../../fixtures/first-fitting/jobs.json" with { type: "json" };
import texts from "../../../fixtures/first-fitting/texts.json" with { type: "json" };

const stored = new Map<string, string>();
beforeEach(() => {
  for (const [key, value] of Object.entries(texts)) stored.set(key, JSON.stringify(value));
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => stored.get(key) ?? null,
    setItem: (key: string, text: string) => stored.set(key, text),
    removeItem: (key: string) => stored.delete(key),
    key: (index: number) => [...stored.keys()][index] ?? null,
    get length() {
      return stored.size;
    },
  });
});
afterEach(() => void vi.unstubAllGlobals());

describe("what the first code kept", () => {
  test.each([
    ["three-wheel", 16],
    ["dial-encoder", 19],
  ])("of a fitting of %s goes on, with its %i acts and its checks", (id, acts) => {
    const { kept, problem } = recallWork(fittingKey(id), FITTING_WORK);
    if (kept === null) throw new Error("it is not read");
    const session = resumedFitting(kept, shippedProfile(id), seededChance(1), null, 1e6);
    expect(problem).toBeNull();
    expect(session?.acts).toHaveLength(acts);
    expect(session?.log.map(({ kind }) => kind)).toEqual(["cover", "zero", "feelers", "rim"]);
    expect(session?.chart.getSnapshot().value).toBe("closed");
    expect(session?.workedBy(1e6)).toBe(kept.worked_ms);
    expect(lastFitted()).not.toBeNull();
  });

  test("of a service visit goes on, and nothing is wrong with it", () => {
    const { session, problem } = firstVisit(new URLSearchParams(), seededChance(1), 1e6);
    expect([session.tried.length, session.setup.seed, session.workedBy(1e6), problem]).toEqual([24, 12, 60_000, null]);
    session.leave();
    expect(visitFaults(session.visit)).toEqual([]);
  });

  test.each(jobs.map((job) => [job.kind, job] as const))("of a job is read and told: %s", (_, written) => {
    const job = jobSchema.parse(written);
    expect(detailsOf(job)).not.toBeNull();
    expect(jobIsRight(job)).toBe(job.isRight);
    expect(jobStory(job).sentence).not.toBe("");
  });
});

describe("the details of a job", () => {
  const grown: readonly (readonly [string, string, unknown])[] = [
    ["fitting", "skipped", "rim"],
    ["service", "found", "key-loose"],
    ["inspection", "named", "rubs"],
  ];
  test.each(grown)("of %s with 10,000 entries of %s are not read: nothing here wrote them", (kind, field, entry) => {
    const job = jobSchema.parse(jobs.find((one) => one.kind === kind));
    const details = { ...Object(job.details), [field]: Array.from({ length: 10_000 }, () => entry) };
    expect(detailsOf({ kind: job.kind, details })).toBeNull();
  });
});
