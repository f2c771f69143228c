import fc from "fast-check";
import { expect, test } from "vitest";
import { Sender } from "../../../src/app/school/sender";
import type { SentRecord } from "../../../src/school/wire/recordsWire";
import { Logbook } from "../../../src/store/logbook";
import { attemptOf, type DatabaseHost, LogbookDatabase } from "../../../src/store/logbookDatabase";
import { deleteRecord } from "../../../src/store/moveRecords";
import { joinHere } from "../../../src/store/outbox/joinings";
import { outboxCounts } from "../../../src/store/outbox/outbox";
import { ServerStub, type Weather } from "../../support/classServerStub";
import { anAttempt, emptyHost, JOINED_ADA, NOON } from "../../support/logbookRecords";

/** A bench whose page may be killed at any moment: only its database outlives that. */
class Bench {
  readonly server = new ServerStub(() => this.now);
  readonly weathers: Weather[] = [];
  now = NOON;
  /** The part after which the page is killed; none where left out. */
  killAfter: number | null = null;
  private readonly host: DatabaseHost = emptyHost();
  private logbook: Logbook | null = null;
  private sender: Sender | null = null;
  private timers: (() => void)[] = [];

  async open(): Promise<void> {
    this.logbook?.close();
    this.timers = [];
    const logbook = new Logbook(new LogbookDatabase("bench", this.host));
    await logbook.open();
    this.logbook = logbook;
    this.sender = new Sender({
      logbook,
      post: async (_sentAt, records) => this.post(logbook, records),
      postChanges: {
        edits: async (edits) => this.server.edit(edits, this.weathers.shift() ?? "fair"),
        deletions: async (records) => this.server.delete(records, this.weathers.shift() ?? "fair"),
      },
      oneTab: async (act) => {
        await act();
        return true;
      },
      now: () => this.now,
      chance: () => 0.5,
      later: (act) => {
        this.timers.push(act);
        return () => {
          this.timers = this.timers.filter((one) => one !== act);
        };
      },
    });
  }

  get book(): Logbook {
    if (this.logbook === null) throw new Error("not open");
    return this.logbook;
  }

  async send(): Promise<void> {
    this.now += 600_000;
    this.timers = [];
    await this.sender?.send();
  }

  get state() {
    return this.sender?.state;
  }

  private async post(logbook: Logbook, records: readonly SentRecord[]) {
    const answer = this.server.post(records, this.weathers.shift() ?? "fair");
    // The page is gone before it could take the answer down.
    if (this.killAfter !== null && this.killAfter-- === 0) logbook.close();
    return answer;
  }
}

const weather = fc.constantFrom<Weather>(
  "fair",
  "lost",
  "answer-lost",
  "twice",
  "failing",
  "half-answered",
  "too-large",
);
const step = fc.oneof(
  fc.record({ act: fc.constant("record" as const), count: fc.integer({ min: 1, max: 12 }) }),
  fc.record({ act: fc.constant("send" as const), weathers: fc.array(weather, { maxLength: 6 }) }),
  fc.record({ act: fc.constant("kill" as const), after: fc.integer({ min: 0, max: 3 }) }),
  fc.record({ act: fc.constant("note" as const), which: fc.nat(), note: fc.stringMatching(/^[a-z]{0,5}$/) }),
  fc.record({ act: fc.constant("delete" as const), which: fc.nat() }),
);

type Step =
  | { readonly act: "record"; readonly count: number }
  | { readonly act: "send"; readonly weathers: readonly Weather[] }
  | { readonly act: "kill"; readonly after: number }
  | { readonly act: "note"; readonly which: number; readonly note: string }
  | { readonly act: "delete"; readonly which: number };

/** Takes some records down; every seventh is one that the server refuses. */
async function record(bench: Bench, ids: string[], count: number, marked: number): Promise<void> {
  for (let k = 0; k < count; k++) {
    const id = `a${ids.length}`;
    ids.push(id);
    if (ids.length % 7 === marked % 7) bench.server.refused.add(id);
    await bench.book.save({ kind: "attempts", record: anAttempt(id, { personId: "ada" }) });
  }
}

/** Notes something to one of the records that are there, or deletes it. */
async function change(bench: Bench, step: Extract<Step, { which: number }>, ids: readonly string[]): Promise<void> {
  const id = ids[step.which % Math.max(1, ids.length)] ?? "";
  const before = await bench.book.read((database) => database.attempts.get(id), undefined);
  if (before === undefined) return;
  if (step.act === "delete") await deleteRecord(bench.book, "attempts", id);
  else {
    const record = { ...attemptOf(before), note: step.note, updatedAt: before.updatedAt + 1 };
    await bench.book.save({ kind: "attempts", record });
  }
}

async function take(bench: Bench, step: Step, ids: string[], marked: number): Promise<void> {
  if (step.act === "record") return record(bench, ids, step.count, marked);
  if (step.act === "send") {
    bench.weathers.push(...step.weathers);
    return bench.send();
  }
  if (step.act !== "kill") return change(bench, step, ids);
  bench.killAfter = step.after;
  await bench.send();
  bench.killAfter = null;
  return bench.open();
}

/** Notes of the records that are here, by id. */
const recordsHere = async (book: Logbook) =>
  new Map((await book.read((database) => database.attempts.toArray(), [])).map(({ id, note = "" }) => [id, note]));

test("whatever is cut, lost, doubled or killed, records, notes and deletions come to the server and the outbox empties", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 8 }), fc.nat(), async (steps, marked) => {
      const bench = new Bench();
      await bench.open();
      await joinHere(bench.book, JOINED_ADA);
      const ids: string[] = [];
      for (const one of steps) await take(bench, one, ids, marked);
      bench.weathers.length = 0;
      await bench.send();
      const { refused, taken, bodies, changes } = bench.server;
      const here = await recordsHere(bench.book);
      const kept = [...refused].filter((id) => here.has(id)).length;
      expect([...here.keys()].filter((id) => !refused.has(id) && !taken.has(id))).toEqual([]);
      expect(await outboxCounts(bench.book, bench.now)).toEqual({ waiting: 0, refused: kept });
      expect(bench.state).toMatchObject({ waiting: 0, refused: kept, trouble: null });
      for (const id of ids.filter((one) => taken.has(one))) {
        expect(changes.deleted.has(id)).toBe(!here.has(id));
        const note = changes.edits.get(id)?.note ?? JSON.parse(bodies.get(id) ?? "{}").note;
        if (here.has(id)) expect(note ?? "").toBe(here.get(id));
      }
    }),
    { numRuns: 40 },
  );
});

test("a record at which the server fails does not hold up the others", async () => {
  const bench = new Bench();
  await bench.open();
  await joinHere(bench.book, JOINED_ADA);
  const ids = Array.from({ length: 30 }, (_, k) => `a${String(k).padStart(2, "0")}`);
  for (const id of ids) await bench.book.save({ kind: "attempts", record: anAttempt(id, { personId: "ada" }) });
  bench.server.poison.add("a00");
  for (let round = 0; round < 12; round++) await bench.send();
  expect(bench.server.taken.size).toBe(29);
  bench.server.poison.clear();
  for (let round = 0; round < 3; round++) await bench.send();
  expect(bench.server.taken.size).toBe(30);
});

test.each([
  { weathers: ["lost"] as const, state: { waiting: 1, trouble: { kind: "no-network" } } },
  { weathers: ["failing"] as const, state: { trouble: { kind: "server" } } },
  { weathers: [] as const, state: { waiting: 0, trouble: null, sentAt: expect.any(Number) } },
])("after $weathers a person is told $state", async ({ weathers, state }) => {
  const bench = new Bench();
  await bench.open();
  await joinHere(bench.book, JOINED_ADA);
  await bench.book.save({ kind: "attempts", record: anAttempt("a", { personId: "ada" }) });
  bench.weathers.push(...weathers);
  await bench.send();
  expect(bench.state).toMatchObject({ ...state, isSending: false });
});
