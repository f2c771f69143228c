import type * as z from "zod/mini";
import { recordHash } from "../../records/hashedRecord";
import { sittingNote } from "../../records/sitting/sittingNote";
import type { Apprentice } from "../../school/demo/demoClass";
import type { MadeRecord } from "../../school/demo/demoRecords";
import { type SatSitting, satByHand } from "../../school/demo/demoSitting";
import type { givenSitting } from "../../school/wire/assignmentsWire";
import type { joined } from "../../school/wire/peopleWire";
import { PART_LIMITS, type recordsReceipt } from "../../school/wire/recordsWire";
import type { Chance } from "../../statistics/chance";
import type { ClassServer } from "../http/routes";
import { DemoAsker } from "./demoAsker";

/** The bench of one invented apprentice: it makes records, and sends what it has when it can. Mutable. */
export class DemoBench {
  readonly apprentice: Apprentice;
  personId = "";
  /** Records that the server has acknowledged, and how often it said that it knew one already. */
  readonly acknowledged = new Set<string>();
  known = 0;
  private waiting: readonly MadeRecord[] = [];
  private readonly asker: DemoAsker;
  private readonly chance: Chance;

  constructor(server: ClassServer, apprentice: Apprentice, chance: Chance) {
    this.apprentice = apprentice;
    this.chance = chance;
    this.asker = new DemoAsker(server);
  }

  async join(code: string): Promise<void> {
    const { name } = this.apprentice;
    const { person } = await this.asker.post<z.infer<typeof joined>>("/api/join", { code, name, bench: `${name}’s` });
    this.personId = person.id;
  }

  /** What is recorded here, from its moment on. */
  keep(records: readonly MadeRecord[]): void {
    this.waiting = [...this.waiting, ...records];
  }

  /** Sends what there is by now. @param isTwice - the answer is lost on its way, so all is sent again */
  async send(now: number, isTwice = false): Promise<void> {
    const part = this.waiting.filter(({ at }) => at <= now).slice(0, PART_LIMITS.records);
    if (part.length === 0) return;
    for (let times = isTwice ? 2 : 1; times > 0; times--) await this.sendPart(part, now);
    this.waiting = this.waiting.filter(({ sent }) => !this.acknowledged.has(sent.record.id));
  }

  private async sendPart(part: readonly MadeRecord[], now: number): Promise<void> {
    const body = { sentAt: now, records: part.map(({ sent }) => sent) };
    const { receipts } = await this.asker.post<z.infer<typeof recordsReceipt>>("/api/bench/records", body, true);
    for (const { id, outcome } of receipts) {
      if (id !== null && outcome !== "refused") this.acknowledged.add(id);
      if (outcome === "known") this.known += 1;
    }
  }

  /** Begins a sitting of an assignment, and sits it. @param sittingId - made at the bench */
  async sit(
    assignmentId: string,
    sittingId: string,
    appVersion: string,
  ): Promise<SatSitting & { readonly id: string }> {
    const { apprentice, personId } = this;
    const given = await this.asker.post<z.infer<typeof givenSitting>>(`/api/bench/people/${personId}/sittings`, {
      assignmentId,
      sittingId,
    });
    const sat = satByHand({ given, apprentice, personId, appVersion }, this.chance);
    const { record, tries, endedAt } = sat;
    const note = sittingNote({ id: sittingId, now_ms: endedAt }, record, recordHash(record));
    this.keep([
      ...tries.map((one) => ({
        at: one.endedAt,
        sent: { kind: "attempts" as const, record: one.record, motion: one.motion },
      })),
      { at: endedAt, sent: { kind: "sittings" as const, record: { ...note, personId } } },
    ]);
    return { ...sat, id: sittingId };
  }

  /** Sends a try of a sitting as it has ended. */
  async sendTry({ id, tries }: SatSitting & { readonly id: string }, index: number): Promise<void> {
    const { result, motion } = tries[index] ?? {};
    await this.asker.post(`/api/bench/sittings/${id}/tries`, { tries: [{ index, result, motion, waited_ms: 0 }] });
  }
}
