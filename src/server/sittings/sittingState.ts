import type * as z from "zod/mini";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { sittingState } from "../../school/wire/assignmentsWire";
import type { World } from "../world/world";
import { judgeWaiting } from "./judging";
import { knownSittings } from "./sittingLines";

type Findings = z.infer<typeof sittingState>["findings"];

const NONE: Findings = { problems: [], remarks: [] };

/** How a sitting stands, with what was found of it. @throws {SchoolError} "no-such-thing" */
export async function stateOfSitting(
  schoolId: string,
  sittingId: string,
  world: World,
): Promise<z.infer<typeof sittingState>> {
  const which = { schoolId, sittingId };
  await judgeWaiting(which, world);
  const [known] = await knownSittings(which, world);
  if (known === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
  const { tries } = await world.database
    .selectFrom("sitting_tries")
    .select(({ fn }) => fn.countAll().as("tries"))
    .where("school_id", "=", schoolId)
    .where("sitting_id", "=", sittingId)
    .executeTakeFirstOrThrow();
  const { problems, remarks }: Findings = known.found === null ? NONE : JSON.parse(known.found);
  return { ...known.line, tries: Number(tries), findings: { problems, remarks } };
}
