import type * as z from "zod/mini";
import type { Answer } from "../../src/app/school/askServer";
import type { PostChanges } from "../../src/app/school/sentChanges";
import { schoolProblem } from "../../src/school/schoolWords";
import { recordsReceipt, type SentRecord, sentRecord } from "../../src/school/wire/recordsWire";

type Receipt = z.output<typeof recordsReceipt>;

/** What the weather does to one part on its way: nothing, or lost before or after the server had it, or the server fails. */
export type Weather = "fair" | "lost" | "answer-lost" | "twice" | "failing" | "half-answered" | "too-large";

/** A class server of a few lines: takes each record once, and keeps count of how often it came. */
export class ServerStub {
  /** How often each record came, by its id. */
  readonly taken = new Map<string, number>();
  /** Each record as it first came. */
  readonly bodies = new Map<string, string>();
  /** Ids that it refuses, and ids at which it fails whatever else is in the part. */
  readonly refused = new Set<string>();
  readonly poison = new Set<string>();
  private readonly now: () => number;

  constructor(now: () => number) {
    this.now = now;
  }

  /** Takes a part, in some weather. */
  post(records: readonly SentRecord[], weather: Weather): Answer<Receipt> {
    if (weather === "lost") return { kind: "silent" };
    if (weather === "too-large" && records.length > 1) {
      return { kind: "refused", status: 413, problem: schoolProblem("too-large", []) };
    }
    if (weather === "failing" || records.some(({ record }) => this.poison.has(record.id))) {
      return { kind: "refused", status: 500, problem: schoolProblem("server-failed", []) };
    }
    const receipts = records.map((one) => this.take(one));
    if (weather === "twice") for (const one of records) this.take(one);
    if (weather === "answer-lost") return { kind: "silent" };
    const told = weather === "half-answered" ? receipts.slice(0, Math.floor(receipts.length / 2)) : receipts;
    return { kind: "answered", value: recordsReceipt.parse({ now: this.now(), receipts: told }) };
  }

  /** Takes changes of what it has: each holds, in some weather. */
  readonly changes = {
    edits: new Map<string, { readonly note?: string | undefined; readonly version: number }>(),
    deleted: new Set<string>(),
  };

  /** Takes edits: as if no other bench ever changed anything. */
  edit(edits: Parameters<PostChanges["edits"]>[0], weather: Weather): Awaited<ReturnType<PostChanges["edits"]>> {
    if (weather === "lost") return { kind: "silent" };
    if (weather === "failing") return { kind: "refused", status: 500, problem: schoolProblem("server-failed", []) };
    const receipts = edits.map(({ recordId, note }) => {
      const version = (this.changes.edits.get(recordId)?.version ?? 0) + 1;
      if (!this.taken.has(recordId)) return { recordId, outcome: "no-record" as const, version: 0 };
      this.changes.edits.set(recordId, { note, version });
      return { recordId, outcome: "taken" as const, version };
    });
    return weather === "answer-lost" ? { kind: "silent" } : { kind: "answered", value: { edits: receipts } };
  }

  /** Takes deletions. */
  delete(records: readonly string[], weather: Weather): Awaited<ReturnType<PostChanges["deletions"]>> {
    if (weather === "lost") return { kind: "silent" };
    if (weather === "failing") return { kind: "refused", status: 500, problem: schoolProblem("server-failed", []) };
    const deletions = records.map((recordId) => {
      if (!this.taken.has(recordId)) return { recordId, outcome: "no-record" as const };
      this.changes.deleted.add(recordId);
      return { recordId, outcome: "deleted" as const };
    });
    return weather === "answer-lost" ? { kind: "silent" } : { kind: "answered", value: { deletions } };
  }

  private take(one: SentRecord): Receipt["receipts"][number] {
    const { id } = sentRecord.parse(one).record;
    if (this.refused.has(id)) return { id, outcome: "refused", problem: { code: "not-allowed", path: [], values: {} } };
    if (this.changes.deleted.has(id)) return { id, outcome: "erased" };
    const body = JSON.stringify(one.record);
    const known = this.bodies.get(id) ?? body;
    this.bodies.set(id, known);
    const before = this.taken.get(id) ?? 0;
    this.taken.set(id, before + 1);
    if (known !== body) return { id, outcome: "refused", problem: { code: "changed", path: [], values: {} } };
    return { id, outcome: before === 0 ? "received" : "known" };
  }
}
