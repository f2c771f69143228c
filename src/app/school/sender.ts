import type * as z from "zod/mini";
import { clockAhead_ms } from "../../school/outbox/clockAhead";
import { afterAnswer, afterRefusal, afterSilence, firstPace, type Pace, wait_ms } from "../../school/outbox/pace";
import { partOf } from "../../school/outbox/partOf";
import { settle } from "../../school/outbox/settle";
import { PART_LIMITS, type recordsReceipt, type SentRecord } from "../../school/wire/recordsWire";
import type { Logbook } from "../../store/logbook";
import { nextChanges } from "../../store/outbox/changes";
import { bringForward, holdBack, nextToSend, outboxCounts, settleSent } from "../../store/outbox/outbox";
import type { Problem } from "../../wording/problem";
import { Store } from "../parts/page/store";
import type { Answer } from "./askServer";
import { NOTHING_SENT, type SendingState, type Trouble } from "./page/sendingState";
import { type PostChanges, sentChanges } from "./sentChanges";

/** What a sender has of the outer world. */
export interface SenderWorld {
  readonly logbook: Logbook;
  readonly post: (sentAt: number, records: readonly SentRecord[]) => Promise<Answer<z.output<typeof recordsReceipt>>>;
  readonly postChanges: PostChanges;
  /** Acts unless another tab does. @returns whether it acted */
  readonly oneTab: (act: () => Promise<void>) => Promise<boolean>;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** From 0 to below 1. */
  readonly chance: () => number;
  /** Acts after some time. @returns calls it off */
  readonly later: (act: () => void, wait_ms: number) => () => void;
}

/** Looks again while another tab sends, ms. */
const OTHER_TAB_MS = 5000;
/** Looks again for what is held back after a failure, ms. */
const HELD_MS = 30_000;
/** Room for what is round the records of a part, bytes. */
const ROUND = 1024;
const ROOM_BYTES = PART_LIMITS.bytes - ROUND;

const UNAUTHORIZED = 401;
const TOO_MANY = 429;
/** A part of one record that is refused so is refused for good. */
const FOR_GOOD = [400, 413];

/** How long the server asks to wait, ms. */
function waitAsked({ values }: Problem): number {
  const seconds = Number(values.seconds);
  return Number.isFinite(seconds) ? 1000 * seconds : 0;
}

/**
 * Sends what waits in the outbox, part by part, until nothing waits or nobody answers; then again after a while. The bench
 * never waits for it, and a record waits until the server has answered for it.
 */
export class Sender extends Store {
  state: SendingState = NOTHING_SENT;
  private readonly world: SenderWorld;
  private pace: Pace = firstPace(PART_LIMITS.records);
  private running: Promise<void> | null = null;
  private isAskedAgain = false;
  private callOff: (() => void) | null = null;

  constructor(world: SenderWorld) {
    super();
    this.world = world;
  }

  /** Whether it waits after a failure. */
  get isWaiting(): boolean {
    return this.callOff !== null;
  }

  /** Sends what waits now, whatever it waited for. Never throws. @returns when it is done, for this time */
  send(): Promise<void> {
    if (this.running !== null) {
      this.isAskedAgain = true;
      return this.running;
    }
    this.callOff?.();
    this.callOff = null;
    this.running = this.sendAll().finally(() => {
      this.running = null;
    });
    return this.running;
  }

  /** Looks how much waits, and sends it unless it waits after a failure. Never throws. */
  async look(): Promise<void> {
    await this.count();
    if (this.state.waiting > 0 && !this.isWaiting) await this.send();
  }

  private async sendAll(): Promise<void> {
    this.tell({ isSending: true });
    let goesOn = true;
    while (goesOn) {
      this.isAskedAgain = false;
      const isOurs = await this.world
        .oneTab(async () => {
          goesOn = await this.sendPart();
        })
        .catch(() => {
          // The database failed: whatever the server has taken by now is sent once more, and it knows that.
          this.pace = afterSilence(this.pace);
          this.tell({ trouble: { kind: "no-storage" } });
          this.again();
          goesOn = false;
          return true;
        });
      if (!isOurs) {
        this.again(OTHER_TAB_MS);
        goesOn = false;
      }
      goesOn ||= this.isAskedAgain && !this.isWaiting;
    }
    await this.count();
    const { waiting, trouble } = this.state;
    // What was held back after a failure is tried again, though somebody asked for everything in between.
    if (waiting > 0 && !this.isWaiting && trouble?.kind !== "signed-out") {
      this.again(Math.max(HELD_MS, wait_ms(this.pace, this.world.chance())));
    }
    this.tell({ isSending: false });
  }

  /** @returns whether more may go at once */
  private async sendPart(): Promise<boolean> {
    const { logbook, post, now } = this.world;
    const waiting = await nextToSend(logbook, this.pace.records, now());
    if (waiting.length === 0) return this.sendChanges();
    const sized = waiting.map((record) => ({
      record,
      bytes: new TextEncoder().encode(JSON.stringify(record)).length + 1,
    }));
    const part = partOf(sized, { records: this.pace.records, bytes: ROOM_BYTES }).map(({ record }) => record);
    const sentAt = now();
    const answer = await post(sentAt, part);
    if (answer.kind === "silent") return this.fail(afterSilence(this.pace), { kind: "no-network" });
    if (answer.kind === "refused") {
      const ids = part.map(({ record }) => record.id);
      return this.refused(ids, answer, (problem) =>
        settleSent(logbook, [{ id: ids[0] ?? "", state: "refused", problem }]),
      );
    }
    const settled = settle(
      part.map(({ record }) => record.id),
      answer.value.receipts,
    );
    const clock = clockAhead_ms(sentAt, now(), answer.value.now);
    // Nothing of it is answered for: as if nobody had answered.
    if (settled.length === 0) return this.fail(afterSilence(this.pace), { kind: "no-network" });
    await settleSent(logbook, settled);
    this.pace = afterAnswer(this.pace, PART_LIMITS.records);
    this.tell({ trouble: null, sentAt: now(), clockAhead_ms: clock });
    return true;
  }

  /** Sends what was changed of records that the class has. @returns whether more may go at once */
  private async sendChanges(): Promise<boolean> {
    const { logbook, now, postChanges } = this.world;
    const part = await nextChanges(logbook, Math.min(this.pace.records, PART_LIMITS.records), now());
    if (part === null) {
      this.tell({ trouble: null });
      return false;
    }
    const ids = part.kind === "edits" ? part.edits.map(({ recordId }) => recordId) : part.records;
    const answer = await sentChanges(logbook, part, postChanges);
    if (answer.kind === "silent") return this.fail(afterSilence(this.pace), { kind: "no-network" });
    if (answer.kind === "refused") return this.refused(ids, answer);
    this.pace = afterAnswer(this.pace, PART_LIMITS.records);
    this.tell({ trouble: null, sentAt: now() });
    return true;
  }

  /** @param settle - takes down that one is refused for good; left out, it waits and is sent again */
  private async refused(
    ids: readonly string[],
    { status, problem }: Extract<Answer<unknown>, { kind: "refused" }>,
    settle?: (problem: Problem) => Promise<void>,
  ): Promise<boolean> {
    if (status === UNAUTHORIZED) {
      this.tell({ trouble: { kind: "signed-out" } });
      return false;
    }
    if (status === TOO_MANY) return this.fail(afterSilence(this.pace), { kind: "server", problem }, waitAsked(problem));
    const next = afterRefusal(this.pace, ids.length);
    const only = ids.length === 1 ? ids[0] : undefined;
    if (FOR_GOOD.includes(status) && only === undefined) {
      this.pace = { ...this.pace, records: next.records };
      return true;
    }
    if (FOR_GOOD.includes(status) && settle !== undefined) {
      await settle(problem);
      return true;
    }
    const { logbook, now, chance } = this.world;
    if (only !== undefined) await holdBack(logbook, only, now() + wait_ms(next, chance()));
    return this.fail(next, { kind: "server", problem });
  }

  private fail(pace: Pace, trouble: Trouble, least_ms = 0): false {
    this.pace = pace;
    this.tell({ trouble });
    this.again(Math.max(least_ms, wait_ms(pace, this.world.chance())));
    return false;
  }

  private again(after_ms = wait_ms(this.pace, this.world.chance())): void {
    this.callOff?.();
    this.callOff = this.world.later(() => {
      this.callOff = null;
      void this.send();
    }, after_ms);
  }

  private async count(): Promise<void> {
    const { logbook, now } = this.world;
    const { trouble } = this.state;
    const counts = await bringForward(logbook, now())
      .then(() => outboxCounts(logbook, now()))
      .catch(() => null);
    if (counts === null) this.tell({ trouble: { kind: "no-storage" } });
    else this.tell({ ...counts, ...(counts.waiting === 0 && trouble?.kind === "no-storage" && { trouble: null }) });
  }

  private tell(news: Partial<SendingState>): void {
    this.state = { ...this.state, ...news };
    this.changed();
  }
}
