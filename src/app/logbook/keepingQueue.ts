import type { LogbookWrite } from "../../logbook/logbookWrite";
import type { AttemptNote } from "./attemptNote";
import type { JobNote } from "./jobNote";
import type { ZeroingNote } from "./zeroingNote";

/** What keeps records, once it has been fetched. */
export interface Keeper {
  readonly openUp: () => Promise<void>;
  readonly keepAttempt: (note: AttemptNote) => Promise<void>;
  readonly keepZeroing: (note: ZeroingNote) => Promise<void>;
  readonly keepJob: (note: JobNote) => Promise<void>;
  readonly keepFor: (
    personId: string | null,
    writes: (personId: string) => readonly LogbookWrite[],
  ) => Promise<ReadonlySet<string>>;
  readonly keepMissing: Keeper["keepFor"];
  readonly hasEnded: (sittingId: string) => Promise<boolean>;
  readonly dropAttempt: (id: string) => Promise<void>;
}

type Keeping = (keeper: Keeper) => Promise<unknown>;

/**
 * Records on their way to the logbook, kept one after the other.
 *
 * The logbook and its database are fetched with the first record, not with the page. Where they cannot be fetched, the
 * records wait here and go with the next one: practice never waits, and never fails for them.
 */
export class KeepingQueue {
  private readonly fetchKeeper: () => Promise<Keeper>;
  private readonly waiting: Keeping[] = [];
  private running: Promise<void> = Promise.resolve();

  constructor(fetchKeeper: () => Promise<Keeper>) {
    this.fetchKeeper = fetchKeeper;
  }

  /** Takes a record in. @returns when all that came before it, and it, are kept or wait on. */
  add(keeping: Keeping): Promise<void> {
    this.waiting.push(keeping);
    this.running = this.running.then(() => this.keepAll());
    return this.running;
  }

  private async keepAll(): Promise<void> {
    const keeper = await this.fetchKeeper().catch(() => null);
    if (keeper === null) return;
    for (let next = this.waiting.shift(); next !== undefined; next = this.waiting.shift()) {
      // Storage that fails is told by the logbook itself, and its record waits there.
      await next(keeper).catch(() => undefined);
    }
  }
}
