import type * as z from "zod/mini";
import { deletionsReceipt, editsReceipt } from "../../school/wire/recordsWire";
import type { Logbook } from "../../store/logbook";
import { type ChangesPart, settleDeletions, settleEdits } from "../../store/outbox/changes";
import { type Answer, askServer, jsonBody } from "./askServer";
import { packedBody } from "./packedBody";

/** Hands changes to the class server. */
export interface PostChanges {
  readonly edits: (
    edits: Extract<ChangesPart, { kind: "edits" }>["edits"],
  ) => Promise<Answer<z.output<typeof editsReceipt>>>;
  readonly deletions: (records: readonly string[]) => Promise<Answer<z.output<typeof deletionsReceipt>>>;
}

/** Hands them to the server that sent the page. */
export const POST_CHANGES: PostChanges = {
  edits: async (edits) => askServer("/bench/edits", editsReceipt, await packedBody({ edits })),
  deletions: async (records) => askServer("/bench/deletions", deletionsReceipt, jsonBody({ records })),
};

/** As if nobody had answered: nothing of it is answered for. */
const answeredFor = (count: number): Answer<number> =>
  count === 0 ? { kind: "silent" } : { kind: "answered", value: count };

/** Sends a part of changes, and takes down what became of them. @throws {LogbookError} when the storage fails */
export async function sentChanges(logbook: Logbook, part: ChangesPart, post: PostChanges): Promise<Answer<number>> {
  if (part.kind === "edits") {
    const answer = await post.edits(part.edits);
    if (answer.kind !== "answered") return answer;
    return answeredFor(await settleEdits(logbook, part.edits, answer.value.edits));
  }
  const answer = await post.deletions(part.records);
  if (answer.kind !== "answered") return answer;
  return answeredFor(await settleDeletions(logbook, part.records, answer.value.deletions));
}
