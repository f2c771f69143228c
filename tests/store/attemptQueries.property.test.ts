import fc from "fast-check";
import { expect, test, vi } from "vitest";
import type { AttemptRecord } from "../../src/records/attemptRecord";
import { attemptsAt, placeOf } from "../../src/store/attemptPlaces";
import {
  type AttemptFilter,
  allAttempts,
  attemptPage,
  countAttempts,
  type PageEnd,
} from "../../src/store/attemptQueries";
import { tagsOfAttempts } from "../../src/store/attemptTags";
import type { Logbook } from "../../src/store/logbook";
import { mergeIntoLogbook } from "../../src/store/wholeLogbook";
import { draws } from "../support/draws";
import { attempts, contents, NOON, openLogbook, SHORT_TRACE, theirPeople } from "../support/logbookRecords";

const filter: fc.Arbitrary<AttemptFilter> = fc.record(
  {
    personId: fc.constantFrom("tavro", "tavro", "mibsy", "nobody"),
    profileId: fc.constantFrom("three-wheel", "dial-encoder"),
    onlyMisses: fc.boolean(),
    tag: fc.constantFrom("cold", "retake", "none"),
    notOf: fc.constantFrom(["s1"], ["s2", "s3"]),
    since: fc.integer({ min: -1, max: 9 }).map((minutes) => NOON + 60_000 * minutes),
  },
  { requiredKeys: ["personId"] },
);

/** The plainest reading of a filter: look at every attempt. */
const expected = (
  all: readonly AttemptRecord[],
  { personId, profileId, onlyMisses, tag, notOf = [], since }: AttemptFilter,
) =>
  all
    .filter((one) => one.personId === personId)
    .filter((one) => profileId === undefined || one.profileId === profileId)
    .filter((one) => onlyMisses !== true || !one.opened)
    .filter((one) => tag === undefined || one.tags.some((own) => own === tag))
    .filter((one) => !notOf.some((id) => id === one.sittingId))
    .filter((one) => since === undefined || one.startedAt >= since)
    .map(({ id, startedAt }) => ({ id, startedAt }))
    .sort((a, b) => a.startedAt - b.startedAt || (a.id < b.id ? -1 : 1))
    .map(({ id }) => id);

/** Many attempts, so that most filters find several pages of them. */
const many = fc
  .tuple(
    fc.array(attempts, { minLength: 4, maxLength: 8 }),
    fc.array(
      fc.tuple(
        fc.subarray(["cold", "retake", "retaken"]),
        fc.constantFrom({}, { sittingId: "s1" }, { sittingId: "s2" }),
      ),
      { minLength: 1, maxLength: 7 },
    ),
  )
  .map(([lists, marks]) =>
    lists.flat().map((one, i) => {
      const [tags, ofSitting] = marks[i % marks.length] ?? [[], {}];
      return { ...one, id: `a${i}`, tags, ...ofSitting };
    }),
  );

/** A logbook in which the first attempts are stored, the last are pending, and some are both: changed since. */
async function partlyStored(all: readonly AttemptRecord[], stored: number, changed: number): Promise<Logbook> {
  const logbook = await openLogbook();
  await mergeIntoLogbook(logbook, contents(theirPeople, all.slice(0, stored)));
  const { database } = logbook;
  if (database === null) throw new Error("not open");
  const refusing = vi.spyOn(database.traces, "put").mockRejectedValue(new DOMException("full", "QuotaExceededError"));
  for (const record of all.slice(Math.max(0, stored - changed))) {
    await logbook.save({ kind: "attempts", record, trace: SHORT_TRACE });
  }
  refusing.mockRestore();
  return logbook;
}

/** More attempts than there are: pages that repeat themselves end here. */
const MOST = 1000;

async function everyPage(logbook: Logbook, asked: AttemptFilter, size: number): Promise<string[]> {
  const ids: string[] = [];
  let before: PageEnd | undefined;
  for (;;) {
    const page = await attemptPage(logbook, asked, size, before);
    ids.push(...page.attempts.map(({ id }) => id));
    if (page.next === null || ids.length > MOST) return ids;
    expect(page.attempts).toHaveLength(size);
    before = page.next;
  }
}

/** Every stretch of a length that a list has, by the place of its first attempt. */
async function everyStretch(logbook: Logbook, asked: AttemptFilter, count: number, size: number) {
  const stretches: string[][] = [];
  for (let first = 0; first < count; first++) {
    stretches.push((await attemptsAt(logbook, asked, first, size)).map(({ id }) => id));
  }
  return stretches;
}

test("pages, places, lists and counts find what a look at every attempt finds, stored or pending", {
  timeout: 60_000,
}, async () => {
  await fc.assert(
    fc.asyncProperty(
      many,
      fc.nat(),
      fc.nat(3),
      filter,
      fc.integer({ min: 1, max: 4 }),
      async (all, cut, changed, asked, size) => {
        const logbook = await partlyStored(all, cut % (all.length + 1), changed);
        const ids = expected(all, asked);
        expect(await everyPage(logbook, asked, size)).toEqual(ids.toReversed());
        const latestFirst = ids.toReversed();
        expect(await everyStretch(logbook, asked, ids.length, size)).toEqual(
          latestFirst.map((_, first) => latestFirst.slice(first, first + size)),
        );
        const whole = await attemptsAt(logbook, asked, 0, MOST);
        expect(await Promise.all(whole.map((one) => placeOf(logbook, asked, one)))).toEqual([...latestFirst.keys()]);
        expect((await allAttempts(logbook, asked)).map(({ id }) => id)).toEqual(ids);
        expect(await countAttempts(logbook, asked)).toBe(ids.length);
        logbook.close();
      },
    ),
    { numRuns: draws(25, 200) },
  );
});

test("the tags of a person are each told once, of stored attempts and of those that wait", async () => {
  await fc.assert(
    fc.asyncProperty(many, fc.nat(40), async (all, stored) => {
      const logbook = await partlyStored(all, stored, 0);
      const own = all.filter(({ personId }) => personId === "tavro").flatMap(({ tags }) => tags);
      expect(await tagsOfAttempts(logbook, "tavro")).toEqual([...new Set(own)].sort());
    }),
    { numRuns: draws(8, 50) },
  );
});
