import type * as z from "zod/mini";
import { dueAnswer } from "../../school/wire/assignmentsWire";
import type { Logbook } from "../logbook";

/** What was due for somebody of a class when the server last said so. */
export interface KeptDue {
  readonly list: z.output<typeof dueAnswer>;
  /** When that was, milliseconds since 1970, by the clock of this bench. */
  readonly at: number;
}

/**
 * Keeps what is due for somebody who joined here, with the joining: whoever leaves takes it along. Nobody hears of it, since no
 * record changes; of somebody who has left nothing is kept.
 *
 * @param kept - null where the server says that it is not theirs any more
 * @throws when the storage fails
 */
export async function keepDue({ database }: Logbook, personId: string, kept: KeptDue | null): Promise<void> {
  await database?.joinings.update(personId, { due: kept ?? undefined });
}

/** What was kept so; null where nothing is, or another version kept it otherwise. @throws {LogbookError} when the storage fails */
export async function keptDue(logbook: Logbook, personId: string): Promise<KeptDue | null> {
  const joining = await logbook.read(({ joinings }) => joinings.get(personId), undefined);
  const list = dueAnswer.safeParse(joining?.due?.list);
  return joining?.due === undefined || !list.success ? null : { list: list.data, at: joining.due.at };
}
