import type { ClassTable, StandingCell } from "../../progress/classTable";
import { handsOfSummaries, type OwnSummary, summaryTable } from "../../progress/summaryTable";
import type { Hand } from "../../realdial/sources/handOf";
import type { PersonRecord } from "../../records/records";
import { foundClass } from "../people/found";
import type { World } from "../world/world";

/** Which class of which school, and what its table is of. */
export interface AskedTable {
  readonly schoolId: string;
  readonly classId: string;
  readonly hand?: Hand | undefined;
}

/** Who is in a class now. */
async function peopleOf({ schoolId, classId }: AskedTable, { database }: World): Promise<PersonRecord[]> {
  const rows = await database
    .selectFrom("class_people")
    .innerJoin("people", (join) =>
      join.onRef("people.id", "=", "person_id").onRef("people.school_id", "=", "class_people.school_id"),
    )
    .select(["people.id", "people.name", "created_at", "updated_at"])
    .where("class_people.school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .where("left_at", "is", null)
    .where("erased_at", "is", null)
    .execute();
  return rows.map(({ id, name, created_at, updated_at }) => ({
    ...{ id, name, part: "trainee" as const },
    ...{ createdAt: created_at, updatedAt: updated_at },
  }));
}

async function summariesOf({ schoolId, classId }: AskedTable, { database }: World): Promise<OwnSummary[]> {
  const rows = await database
    .selectFrom("skill_summaries")
    .innerJoin("class_people", (join) =>
      join
        .onRef("class_people.person_id", "=", "skill_summaries.person_id")
        .onRef("class_people.school_id", "=", "skill_summaries.school_id"),
    )
    .select(["skill_summaries.person_id", "body"])
    .where("class_people.school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .where("left_at", "is", null)
    .execute();
  return rows.map(({ person_id, body }) => ({ personId: person_id, summary: JSON.parse(body) }));
}

/** The class table of a class, and every hand that it turned a dial with. */
interface DeskTable {
  readonly table: ClassTable<StandingCell>;
  readonly hands: readonly Hand[];
}

/** The class table of a class, from its summaries. @throws {SchoolError} "no-such-thing" */
export async function deskTable(asked: AskedTable, world: World): Promise<DeskTable> {
  await foundClass(world.database, asked);
  const people = await peopleOf(asked, world);
  const summaries = await summariesOf(asked, world);
  return {
    table: summaryTable(people, summaries, { now: world.now(), hand: asked.hand }),
    hands: handsOfSummaries(summaries),
  };
}
