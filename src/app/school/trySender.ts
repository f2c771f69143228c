import type * as z from "zod/mini";
import type { TryResult } from "../../drill/marking/tryResult";
import { wait_ms } from "../../school/outbox/pace";
import { TRY_LIMITS, type triesReceipt } from "../../school/wire/assignmentsWire";
import type { sentTries } from "../../school/wire/sentTriesWire";
import type { Answer } from "./askServer";

/** A try as it is sent. */
export type SentTry = z.infer<typeof sentTries>["tries"][number];

/** What is to be known of a sitting, to send its tries. */
export interface SittingSent {
  readonly id: string;
  readonly results: readonly TryResult[];
  /** Of each try, packed; null where none is kept. */
  readonly motions: () => readonly (string | null)[];
}

/** What it has of the outer world. */
export interface TrySenderWorld {
  readonly post: (sittingId: string, tries: readonly SentTry[]) => Promise<Answer<z.output<typeof triesReceipt>>>;
  /** Milliseconds, steady. */
  readonly now: () => number;
  /** From 0 to below 1. */
  readonly chance: () => number;
  /** Acts after some time. @returns calls it off */
  readonly later: (act: () => void, wait_ms: number) => () => void;
}

/** Failures in a row after which the wait grows no more: a minute. */
const MOST_FAILURES = 6;

/** Whoever is signed out joins again, and whoever asked too often may ask later; every other refusal is for good. */
const MAY_PASS = [401, 429];

const isForGood = (answer: Answer<unknown>): boolean =>
  answer.kind === "refused" && answer.status < 500 && !MAY_PASS.includes(answer.status);

/** How long the server asks to wait, ms. */
const waitAsked = (answer: Answer<unknown>): number =>
  answer.kind === "refused" ? 1000 * (Number(answer.problem.values.seconds) || 0) : 0;

/**
 * Sends the tries of a sitting as they end. The sitting never waits for it: what cannot be sent now is sent later, and what
 * is never sent is in its record all the same.
 */
export class TrySender {
  private readonly world: TrySenderWorld;
  private readonly endedAt = new Map<string, number>();
  private readonly has = new Map<string, ReadonlySet<number>>();
  private readonly refused = new Set<string>();
  private failures = 0;
  private callOff: (() => void) | null = null;
  private isSending = false;
  private latest: SittingSent | null = null;

  constructor(world: TrySenderWorld) {
    this.world = world;
  }

  /** Looks at a sitting, and sends what has ended since, unless it waits after a failure. */
  async look(sitting: SittingSent): Promise<void> {
    const now = this.world.now();
    const names = sitting.results.map((_, index) => `${sitting.id} ${index}`);
    for (const name of names) if (!this.endedAt.has(name)) this.endedAt.set(name, now);
    this.latest = sitting;
    if (this.callOff !== null) return;
    await this.send();
  }

  /** Sends what waits now, whatever it waited for. */
  async hurry(): Promise<void> {
    this.callOff?.();
    this.callOff = null;
    await this.send();
  }

  private async send(): Promise<void> {
    if (this.isSending) return;
    this.isSending = true;
    try {
      // What has ended while it was sending goes along.
      while (await this.sendSome(this.latest));
    } finally {
      this.isSending = false;
    }
  }

  /** @returns whether it went well and there may be more */
  private async sendSome(sitting: SittingSent | null): Promise<boolean> {
    if (sitting === null || this.refused.has(sitting.id)) return false;
    const tries = this.missing(sitting);
    if (tries.length === 0) return false;
    const answer = await this.world.post(sitting.id, tries);
    if (answer.kind === "answered") {
      this.has.set(sitting.id, new Set(answer.value.has));
      this.failures = 0;
      return true;
    }
    // What the server does not take now it takes with the record.
    if (isForGood(answer)) this.refused.add(sitting.id);
    else this.again(waitAsked(answer));
    return false;
  }

  private missing({ id, results, motions }: SittingSent): SentTry[] {
    const has = this.has.get(id) ?? new Set();
    const packed = motions();
    const now = this.world.now();
    return results
      .flatMap((result, index) => {
        if (has.has(index)) return [];
        const waited_ms = Math.max(0, now - (this.endedAt.get(`${id} ${index}`) ?? now));
        return [{ index, result, motion: packed[index] ?? null, waited_ms } as SentTry];
      })
      .slice(0, TRY_LIMITS.tries);
  }

  private again(least_ms: number): void {
    this.failures = Math.min(MOST_FAILURES, this.failures + 1);
    const wait = Math.max(least_ms, wait_ms({ failures: this.failures, records: 1 }, this.world.chance()));
    this.callOff = this.world.later(() => void this.hurry(), wait);
  }
}
