import type { HandoverRunRecord } from "../../../../../records/records";
import { type MarkedRun, readKept } from "../session/keptRun";

/** A handover as the database has it. */
export type StoredRun = Pick<HandoverRunRecord, "id" | "isRunning" | "body">;

const later = (one: MarkedRun, other: MarkedRun): number =>
  one.mark.id === other.mark.id ? other.mark.count - one.mark.count : other.mark.startedAt - one.mark.startedAt;

/**
 * Which handover goes on after a reload: the one begun last, in the state that was kept most often.
 *
 * What has ended is final. The page's text goes on only where the database does not have the end of it.
 *
 * @param text - what the page kept as text, or null
 * @param stored - all that the database has
 * @param isWanted - whether an address asks for it
 */
export function runToGoOn(
  text: MarkedRun | null,
  stored: readonly StoredRun[],
  isWanted: (run: MarkedRun) => boolean,
): MarkedRun | null {
  const readRows = (rows: readonly StoredRun[]) => rows.flatMap(({ body }) => readKept(body).marked ?? []);
  const ended = stored.filter(({ isRunning }) => !isRunning);
  const isFinal = (one: MarkedRun) => ended.some(({ id }) => id === one.mark.id);
  const open = [...(text === null ? [] : [text]), ...readRows(stored.filter(({ isRunning }) => isRunning))];
  const [goesOn] = open.filter((one) => !isFinal(one) && isWanted(one)).sort(later);
  // The page's own handover, signed off: it is shown as it ended.
  const own = ended.filter(({ id, body }) => id === text?.mark.id && body !== null);
  return goesOn ?? readRows(own).find(isWanted) ?? null;
}
