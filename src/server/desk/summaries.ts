import type { Transaction } from "kysely";
import { declarationFor } from "../../progress/mastery";
import {
  attemptTry,
  handOfTry,
  inOrder,
  jobTry,
  type SkillSummary,
  type SummedTry,
  summaryAfter,
  summaryOf,
} from "../../progress/skillSummary";
import type { OwnSummary } from "../../progress/summaryTable";
import type { AttemptRecord } from "../../records/attemptRecord";
import type { JobRecord } from "../../records/jobRecord";
import type { DeclarationRecord } from "../../records/records";
import { skillKey } from "../../records/skill";
import type { Tables } from "../database/tables/tables";

/** A record as the server keeps it. */
interface Kept {
  readonly kind: string;
  /** JSON. */
  readonly body: string;
}

/** Kinds that summaries are made of. */
const SUMMED = ["attempts", "jobs", "declarations"];

/** Tries and declarations among records, which were checked when they came. */
function readKept(records: readonly Kept[]) {
  const of = <One>(kind: string) => records.flatMap((one) => (one.kind === kind ? [JSON.parse(one.body) as One] : []));
  return {
    tries: [...of<AttemptRecord>("attempts").map(attemptTry), ...of<JobRecord>("jobs").map(jobTry)],
    declarations: of<DeclarationRecord>("declarations"),
  };
}

const keyOf = (one: SummedTry): string => JSON.stringify([skillKey(one.practice), handOfTry(one)]);

const keyOfSummary = ({ skill, hand }: SkillSummary): string => JSON.stringify([skillKey(skill), hand]);

function byKey(tries: readonly SummedTry[]): Map<string, SummedTry[]> {
  const groups = new Map<string, SummedTry[]>();
  for (const one of tries) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return groups;
}

/** A declaration as summaries hold it. */
function declarationOf(declarations: readonly DeclarationRecord[], one: SummedTry): SkillSummary["declaration"] {
  const found = declarationFor(declarations, one.practice, undefined, handOfTry(one) ?? "screen");
  return found === undefined ? null : { attempts: found.attempts, declaredAt: found.declaredAt };
}

async function write(database: Transaction<Tables>, schoolId: string, own: readonly OwnSummary[]): Promise<void> {
  if (own.length === 0) return;
  const rows = own.map(({ personId, summary }) => ({
    school_id: schoolId,
    person_id: personId,
    profile_id: summary.skill.profileId,
    exercise: summary.skill.exercise,
    hand: summary.hand ?? "",
    body: JSON.stringify(summary),
  }));
  await database
    .insertInto("skill_summaries")
    .values(rows)
    .onConflict((conflict) =>
      conflict
        .columns(["school_id", "person_id", "profile_id", "exercise", "hand"])
        .doUpdateSet((of) => ({ body: of.ref("excluded.body") })),
    )
    .execute();
}

/** Sums a person's records up anew, of all that there are. Whoever calls holds the chain of the school. */
export async function sumUpAnew(database: Transaction<Tables>, schoolId: string, personId: string): Promise<void> {
  await database
    .deleteFrom("skill_summaries")
    .where("school_id", "=", schoolId)
    .where("person_id", "=", personId)
    .execute();
  const records = await database
    .selectFrom("records")
    .select(["kind", "body"])
    .where("school_id", "=", schoolId)
    .where("person_id", "=", personId)
    .where("kind", "in", SUMMED)
    .execute();
  const { tries, declarations } = readKept(records);
  const summaries = [...byKey(tries).values()].flatMap((group) => {
    const [first] = group;
    const summary = first === undefined ? null : summaryOf(group, declarationOf(declarations, first));
    return summary === null ? [] : [{ personId, summary }];
  });
  await write(database, schoolId, summaries);
}

/** The summaries of a person. */
async function summariesOf(database: Transaction<Tables>, schoolId: string, personId: string): Promise<SkillSummary[]> {
  const rows = await database
    .selectFrom("skill_summaries")
    .select("body")
    .where("school_id", "=", schoolId)
    .where("person_id", "=", personId)
    .execute();
  return rows.map(({ body }) => JSON.parse(body));
}

/** A person's summaries after some more tries; null where one comes too late to be added. */
function addedTo(known: readonly SkillSummary[], tries: readonly SummedTry[]): SkillSummary[] | null {
  const after = new Map(known.map((summary) => [keyOfSummary(summary), summary]));
  const changed = new Set<string>();
  for (const one of tries.toSorted((a, b) => inOrder(a.practice, b.practice))) {
    const before = after.get(keyOf(one)) ?? null;
    const next = summaryAfter(before, one, before?.declaration ?? null);
    if (next === null) return null;
    after.set(keyOf(one), next);
    changed.add(keyOf(one));
  }
  return [...after].flatMap(([key, summary]) => (changed.has(key) ? [summary] : []));
}

/**
 * Takes records that have just been stored into the summaries of their people: added where they are later than all before, as
 * they nearly always are; else, and where somebody was declared to have shown a skill, all is summed up anew.
 */
export async function sumUp(
  database: Transaction<Tables>,
  schoolId: string,
  records: readonly (Kept & { readonly personId: string })[],
): Promise<void> {
  const counted = records.filter(({ kind }) => SUMMED.includes(kind));
  for (const personId of new Set(counted.map((one) => one.personId))) {
    const { tries, declarations } = readKept(counted.filter((one) => one.personId === personId));
    const known = declarations.length > 0 ? [] : await summariesOf(database, schoolId, personId);
    const added = declarations.length > 0 ? null : addedTo(known, tries);
    if (added === null) await sumUpAnew(database, schoolId, personId);
    else
      await write(
        database,
        schoolId,
        added.map((summary) => ({ personId, summary })),
      );
  }
}
