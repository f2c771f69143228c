import fc from "fast-check";
import { expect, test } from "vitest";
import { drawTrouble, kindsFor } from "../../../src/handover/trouble/drawTrouble";
import { TROUBLE_KINDS } from "../../../src/handover/trouble/trouble";
import { SHIPPED_PROFILES } from "../../../src/lock/shippedProfiles";
import { readLogbookFile, writeLogbookFile } from "../../../src/records/file/logbookFile";
import { fileSentences } from "../../../src/records/fileWords";
import { hasOtherDefect } from "../../../src/records/job/drawnDefect";
import { aJob, contents, NOON, theirPeople } from "../../support/logbookRecords";

const [LOCK] = SHIPPED_PROFILES;

function diagnosis(profile = LOCK, seed = 12, pool = TROUBLE_KINDS.filter((kind) => kindsFor(profile).includes(kind))) {
  const truth = drawTrouble(profile, pool, seed).trouble;
  const marks = { isKindRight: true, sizeError: 0, isSizeWithin: true, points: 2, tries: 1, measurements: 3 };
  return aJob(`${profile.id}-${seed}`, {
    kind: "trouble",
    profileId: profile.id,
    details: { seed, pool, truth, named: truth, ...marks },
  });
}

const withTruth = (job: ReturnType<typeof diagnosis>, kind: string) => {
  const details = job.details as { readonly truth: object };
  return { ...job, details: { ...details, truth: { ...details.truth, kind } } };
};

test("a diagnosis has the defect that its seed leads to, and every other kind is another", () => {
  const pools = fc.subarray([...TROUBLE_KINDS], { minLength: 1 });
  fc.assert(
    fc.property(fc.constantFrom(...SHIPPED_PROFILES), fc.nat(2 ** 31), pools, (profile, seed, pool) => {
      fc.pre(kindsFor(profile).some((kind) => pool.includes(kind)));
      const job = diagnosis(profile, seed, pool);
      const { kind: drawn } = drawTrouble(profile, pool, seed).trouble;
      for (const kind of TROUBLE_KINDS) expect(hasOtherDefect(withTruth(job, kind))).toBe(kind !== drawn);
    }),
    { numRuns: 40 },
  );
});

test("what cannot be told is none: another kind of job, no details, a lock that is not known here", () => {
  const other = withTruth(diagnosis(), "none of them");
  expect(hasOtherDefect(other)).toBe(false);
  const job = diagnosis();
  const kinds = TROUBLE_KINDS.filter((kind) => hasOtherDefect(withTruth(job, kind)));
  const wrong = withTruth(job, kinds[0] ?? "");
  expect(hasOtherDefect(wrong)).toBe(true);
  expect(hasOtherDefect({ ...wrong, details: undefined })).toBe(false);
  expect(hasOtherDefect({ ...wrong, profileId: "nobody's" })).toBe(false);
  expect(hasOtherDefect({ ...wrong, ownProfile: {} })).toBe(false);
  expect(hasOtherDefect({ ...wrong, kind: "change" })).toBe(false);
});

test("an import says how many have another, and takes them", () => {
  const jobs = [0, 1, 2].map((seed) => diagnosis(LOCK, seed));
  const forged = jobs.slice(1).map((job) => {
    const kind = TROUBLE_KINDS.find((one) => hasOtherDefect(withTruth(job, one))) ?? "";
    return withTruth(job, kind);
  });
  const text = (list: typeof jobs) => {
    const whole = contents(theirPeople, []);
    return writeLogbookFile({ ...whole, records: { ...whole.records, jobs: list } }, NOON);
  };
  expect(readLogbookFile(text(jobs)).remarks).toEqual([]);
  const read = readLogbookFile(text([...jobs.slice(0, 1), ...forged]));
  expect(read.records.jobs).toHaveLength(3);
  expect(fileSentences(read.remarks).join()).toContain(
    "2 diagnoses have another defect than lock and seed lead to: taken as recorded.",
  );
});
