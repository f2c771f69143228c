import type { SittingRecord } from "../../../records/records";
import { keeping } from "../../keeping/keeping";
import type { Keeper } from "../../keeping/keepingQueue";
import type { KeptRecord } from "../../verdicts/keptRecord";
import { isDialTry, type TryInHand } from "../tries/tryInHand";
import { trySetup } from "../tries/trySetup";
import type { EndedTry } from "./keptSitting";
import { keptTryWrite, runningWrite, sittingWrite, tryWrite } from "./sittingLogbook";
import { progressOf, type SittingProgress } from "./sittingProgress";
import type { SittingSession } from "./sittingSession";
import type { SittingShelf } from "./sittingShelf";

const NONE: ReadonlySet<string> = new Set();

/** A sitting that the logbook has as running. */
export interface RunningSitting {
  readonly personId: string;
  readonly progress: SittingProgress;
}

/** The sittings that the logbook has as running and that can be read, latest first. */
export function runningOf(records: readonly SittingRecord[]): RunningSitting[] {
  return records.flatMap(({ personId, body }) => {
    const progress = progressOf((body as { progress?: unknown } | null)?.progress);
    return progress === null ? [] : [{ personId, progress }];
  });
}

/**
 * Hands a sitting to the logbook while it goes on: how far it is, each try the moment it ends, and the one in hand now
 * and then. One sitting and its tries have the same ids whatever happens in between, so nothing comes twice.
 */
export class SittingKeeping {
  private personId: string | null;
  private readonly id: string;
  private readonly onEnded: () => void;
  private flushed: { readonly one: TryInHand; readonly version: number } | null = null;

  /** @param onEnded - told when the logbook has the sitting with its end: then nothing more of it is kept */
  constructor({ id, personId }: Pick<SittingProgress, "id" | "personId">, onEnded: () => void = () => {}) {
    this.id = id;
    this.personId = personId;
    this.onEnded = onEnded;
  }

  /** How far it is, and the try that has just ended, if one has: both or neither. */
  note(progress: SittingProgress, ended: EndedTry | null, now_ms: number): void {
    this.personId = progress.personId;
    this.give((keeper) =>
      keeper.keepFor(this.personId, (personId) => {
        const going = runningWrite(progress, personId, now_ms);
        return ended === null ? [going] : [going, tryWrite(ended.one, this.owner(personId, ended.index, now_ms))];
      }),
    );
  }

  /** The try in hand, if it has gone on since; of a job there is nothing to keep before its end. */
  noteInHand({ inHand: one, isOver, tryIndex }: SittingSession, now_ms: number): void {
    if (one === null || !isDialTry(one) || isOver || one.isEnded || !one.isBegun) return;
    const { version } = one;
    if (this.flushed?.one === one && this.flushed.version === version) return;
    this.flushed = { one, version };
    this.give((keeper) =>
      keeper.keepFor(this.personId, (personId) => [tryWrite(one, this.owner(personId, tryIndex, now_ms))]),
    );
  }

  /** Tries that ended in a page that was killed before the logbook had them. */
  noteMissing({ sheet, seed, tries, results }: SittingSession, shelf: SittingShelf, now_ms: number): void {
    this.give((keeper) =>
      keeper.keepMissing(this.personId, (personId) =>
        results.flatMap((result, index) => {
          const plan = tries[index];
          if (plan === undefined) return [];
          const owner = this.owner(personId, index, now_ms);
          const kept = { motion: shelf.motion(index), outcome: shelf.outcome(index) };
          return keptTryWrite(trySetup(sheet, plan, seed, index), result, kept, owner) ?? [];
        }),
      ),
    );
  }

  /** The record of one that has ended, unless the logbook has it. */
  noteEnd(kept: KeptRecord, now_ms: number): void {
    this.give(async (keeper) => {
      // Where the storage fails to say, it is kept as if it were not there: what has ended is not stored over.
      if (await keeper.hasEnded(this.id).catch(() => false)) return NONE;
      return keeper.keepFor(this.personId, (personId) => [sittingWrite(kept, personId, now_ms)]);
    });
  }

  private owner(personId: string, index: number, now_ms: number) {
    return { sittingId: this.id, personId, index, now_ms };
  }

  private give(keep: (keeper: Keeper) => Promise<ReadonlySet<string>>): void {
    keeping.add(async (keeper) => {
      if ((await keep(keeper)).has(this.id)) this.onEnded();
    });
  }
}
