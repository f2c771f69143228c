import { declarationFor, declarationOf } from "../../progress/mastery";
import { ofHand } from "../../progress/oneHand";
import { type Practice, practiceOfJob, practicesOf } from "../../progress/practice";
import type { Hand } from "../../realdial/sources/handOf";
import { handsOf } from "../../realdial/sources/handsOf";
import { isJobSkill } from "../../records/jobRecord";
import { bySkill, type Skill, skillKey } from "../../records/skill";
import type { LogbookWrite } from "../../store/logbookWrite";
import { toldAttempts, toldJobs } from "../../store/toldTries";
import { recordsOfKind } from "../../store/wholeLogbook";
import type { CurrentLogbook } from "./currentLogbook";
import { currentRule } from "./readinessRule";

/** A person's tries at a skill that may be told, oldest first. */
async function triesAt({ logbook }: CurrentLogbook, personId: string, skill: Skill): Promise<readonly Practice[]> {
  const all = isJobSkill(skill)
    ? practicesOf([], await toldJobs(logbook, personId))
    : practicesOf(await toldAttempts(logbook, { personId, profileId: skill.profileId }), []);
  return all.filter((one) => skillKey(one) === skillKey(skill) && one.isUnfinished !== true);
}

/** Keeps that a skill is shown with a hand, the first time it is. */
async function declare(current: CurrentLogbook, personId: string, skill: Skill, hand: Hand): Promise<void> {
  const { logbook } = current;
  const known = await recordsOfKind(logbook, "declarations");
  const own = known.filter((one) => one.personId === personId);
  const rule = currentRule();
  if (declarationFor(own, skill, rule, hand) !== undefined) return;
  const tries = ofHand(await triesAt(current, personId, skill), hand);
  const declaration = declarationOf(personId, skill, tries, rule);
  if (declaration !== null) await logbook.save({ kind: "declarations", record: declaration });
}

/** Ids of the sittings among records: those that go on, or those that have ended. */
const sittingsAmong = (writes: readonly LogbookWrite[], goOn: boolean): ReadonlySet<string | undefined> =>
  new Set(
    writes.flatMap(({ kind, record }) =>
      kind === "sittings" && (record.state === "running") === goOn ? record.id : [],
    ),
  );

/** A person's tries of sittings that have ended. */
async function triesOf({ logbook }: CurrentLogbook, personId: string, ended: ReadonlySet<string | undefined>) {
  if (ended.size === 0) return [];
  const attempts = await toldAttempts(logbook, { personId });
  const jobs = await toldJobs(logbook, personId);
  return [
    ...attempts.filter(({ sittingId }) => ended.has(sittingId)),
    ...jobs.filter(({ sittingId }) => ended.has(sittingId)).map(practiceOfJob),
  ];
}

/**
 * Keeps the skills that records have just shown. A sitting under way shows none: its tries count once it has ended.
 *
 * @param writes - what was saved, all of one person
 * @throws {LogbookError} when the storage fails
 */
export async function declareShown(
  current: CurrentLogbook,
  personId: string,
  writes: readonly LogbookWrite[],
): Promise<void> {
  const untold = sittingsAmong(writes, true);
  const saved = writes.flatMap((write) => {
    if (write.kind === "attempts") return untold.has(write.record.sittingId) ? [] : write.record;
    return write.kind === "jobs" && !untold.has(write.record.sittingId) ? practiceOfJob(write.record) : [];
  });
  const before = await triesOf(current, personId, sittingsAmong(writes, false));
  for (const { skill, attempts } of bySkill<Practice>([...saved, ...before])) {
    for (const hand of handsOf(attempts)) await declare(current, personId, skill, hand);
  }
}
