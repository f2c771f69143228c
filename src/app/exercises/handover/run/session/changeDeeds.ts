import * as z from "zod/mini";
import { type Graduations, type Milliseconds, turnOf } from "../../../../../lock/dial";
import { graduations } from "../../../../../records/fields";

/** What a hand does in a change besides turning the dial. */
export const KEY_ACTS = ["insertKey", "turnKey", "turnKeyBack", "withdrawKey", "pressButton"] as const;
export type KeyAct = (typeof KEY_ACTS)[number];

const deed = z.union([
  z.object({ by: graduations, at_ms: z.number() }),
  z.object({ use: z.enum(KEY_ACTS), at_ms: z.number() }),
]);

/** What is kept of a change under way: how it began, and what the hand has done since. */
export const keptChangeSchema = z.object({
  wanted: z.array(graduations),
  /** The dial as the hand held it when the change began, unwrapped graduations. */
  hand: graduations,
  /** Where the lock took the dial and its wheels to be then. */
  lock: z.object({ dial: graduations, slack: z.optional(z.array(graduations)) }),
  deeds: z.array(deed),
});

export type Deed = z.infer<typeof deed>;
export type KeptChange = z.infer<typeof keptChangeSchema>;

/** Moves this near to each other are kept as one. Shorter than any pause that a lock counts. */
const TOGETHER: Milliseconds = 500;

/** What a hand has done, in order, so that it can be done again. Mutable. */
export class DeedList {
  readonly deeds: Deed[] = [];
  private begunAt: Milliseconds | null = null;
  /** The move that may still grow, and when it began. */
  private growing: { deed: { by: Graduations; at_ms: Milliseconds }; readonly from: Milliseconds } | null = null;

  /**
   * @param at_ms - by the clock of the change, `at`
   * @param isLast - whether something came of the move: what follows is then another
   */
  turned(by: Graduations, at_ms: Milliseconds, isLast: boolean): void {
    const { growing } = this;
    if (growing !== null && turnOf(growing.deed.by) === turnOf(by) && at_ms - growing.from < TOGETHER) {
      growing.deed.by += by;
      growing.deed.at_ms = at_ms;
    } else {
      const deed = { by, at_ms };
      this.deeds.push(deed);
      this.growing = { deed, from: at_ms };
    }
    if (isLast) this.growing = null;
  }

  used(use: KeyAct): void {
    this.deeds.push({ use, at_ms: this.lastAt });
    this.growing = null;
  }

  /** What is done next comes after a reload, by another clock: it begins where the last deed was. */
  reloaded(): void {
    this.begunAt = null;
    this.growing = null;
  }

  private get lastAt(): Milliseconds {
    return this.deeds.at(-1)?.at_ms ?? 0;
  }

  /** Time since the change began, but for the time of a reload. */
  at(now: Milliseconds): Milliseconds {
    this.begunAt ??= now - this.lastAt;
    return Math.max(this.lastAt, now - this.begunAt);
  }
}
