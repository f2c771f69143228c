import { declarationFor, declarationOf } from "../../progress/mastery";
import { practiceOfJob } from "../../progress/practice";
import { type Skill, skillKey } from "../../records/skill";
import { toldAttempts, toldJobs } from "../../store/toldTries";
import { recordsOfKind } from "../../store/wholeLogbook";
import type { CurrentLogbook } from "./currentLogbook";
import { currentRule } from "./readinessRule";

/** A try at a skill that may have shown it. */
type Shown = Parameters<typeof declarationOf>[2][number];

/**
 * Keeps that a skill is shown, the first time it is.
 *
 * @param tries - all at the skill, oldest first
 * @throws {LogbookError} when the storage fails
 */
export async function declare(
  { logbook }: CurrentLogbook,
  personId: string,
  skill: Skill,
  tries: () => Promise<readonly Shown[]>,
): Promise<void> {
  const known = await recordsOfKind(logbook, "declarations");
  const own = known.filter((one) => one.personId === personId);
  const rule = currentRule();
  if (declarationFor(own, skill, rule) !== undefined) return;
  const declaration = declarationOf(personId, skill, await tries(), rule);
  if (declaration !== null) await logbook.save({ kind: "declarations", record: declaration });
}

/** A person's attempts at a skill, oldest first. @throws {LogbookError} when the storage fails */
export async function attemptsAt({ logbook }: CurrentLogbook, personId: string, { profileId, exercise }: Skill) {
  const attempts = await toldAttempts(logbook, { personId, profileId });
  return attempts.filter((one) => one.exercise === exercise);
}

/** A person's jobs at a skill, oldest first. @throws {LogbookError} when the storage fails */
export async function jobsAt({ logbook }: CurrentLogbook, personId: string, skill: Skill): Promise<readonly Shown[]> {
  const own = (await toldJobs(logbook, personId)).map(practiceOfJob);
  return own.filter((one) => skillKey(one) === skillKey(skill));
}
