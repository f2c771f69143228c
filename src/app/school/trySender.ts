import type * as z from "zod/mini";
import type { TryResult } from "../../drill/marking/tryResult";
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
  /** Acts after some time. */
  readonly later: (act: () => void, wait_ms: number) => void;
}

/** From one failure to the next try to send, ms: at first, and at most. */
const WAIT_MS = { first: 2000, most: 60_000 } as const;

/**
 * Sends the tries of a sitting as they end. The sitting never waits for it: what cannot be sent now is sent later, and what
 * is never sent is in its record all the same.
 */
export class TrySender {
  private readonly world: TrySenderWorld;
  private readonly endedAt = new Map<string, number>();
  private readonly has = new Map<string, ReadonlySet<number>>();
  private readonly refused = new Set<string>();
  private wait_ms: number = WAIT_MS.first;
  private isSending = false;
  private latest: SittingSent | null = null;

  constructor(world: TrySenderWorld) {
    this.world = world;
  }

  /** Looks at a sitting, and sends what has ended since. */
  async look(sitting: SittingSent): Promise<void> {
    const now = this.world.now();
    const names = sitting.results.map((_, index) => `${sitting.id} ${index}`);
    for (const name of names) if (!this.endedAt.has(name)) this.endedAt.set(name, now);
    this.latest = sitting;
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
      this.wait_ms = WAIT_MS.first;
      return true;
    }
    // What the server does not take now it takes with the record; only its silence is worth another try.
    if (answer.kind === "refused" && answer.status < 500) this.refused.add(sitting.id);
    else this.again();
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

  private again(): void {
    this.world.later(() => void (this.latest && this.look(this.latest)), this.wait_ms);
    this.wait_ms = Math.min(WAIT_MS.most, 2 * this.wait_ms);
  }
}
