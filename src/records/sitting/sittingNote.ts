import type { SittingRecord as KeptSitting } from "../records";
import type { SittingRecord } from "./sittingRecord";

/** A sitting as it is kept, but for the person, who is looked up later. */
export type SittingNote = Omit<KeptSitting, "personId">;

/** What a sitting is known by, and when its note was made, milliseconds since 1970. */
interface SittingFrame {
  readonly id: string;
  readonly now_ms: number;
}

const plain = (body: object) => JSON.parse(JSON.stringify(body));

function stamped({ id, now_ms }: SittingFrame, { sheet, startedAt }: Pick<SittingRecord, "sheet" | "startedAt">) {
  const parsed = Date.parse(startedAt);
  const start = Number.isFinite(parsed) ? parsed : Math.round(now_ms);
  return { id, createdAt: start, updatedAt: Math.round(now_ms), startedAt: start, title: sheet.title };
}

/** A sitting that goes on. @param progress - all that is needed to go on with it */
export const runningNote = (
  frame: SittingFrame,
  progress: Pick<SittingRecord, "sheet" | "startedAt">,
): SittingNote => ({ ...stamped(frame, progress), state: "running", body: plain({ progress }) });

const VERDICTS = { pass: "passed", fail: "failed", "not shown": "not shown yet" } as const;

/** A sitting that has ended. @param sha256 - the fingerprint of its record */
export const sittingNote = (frame: SittingFrame, record: SittingRecord, sha256: string): SittingNote => ({
  ...stamped(frame, record),
  state: record.ended === "broken-off" ? "broken-off" : "finished",
  verdict: VERDICTS[record.marking.verdict],
  body: plain({ record, sha256 }),
});
