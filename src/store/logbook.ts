import { LogbookError } from "../records/logbookError";
import type { PersonRecord } from "../records/records";
import { checkInstalled } from "./installedVersion";
import { KnownPeople } from "./knownPeople";
import type { LogbookDatabase } from "./logbookDatabase";
import { checkWrite, isSameRecord, type LogbookWrite, withWrite } from "./logbookWrite";
import { restoreOwners } from "./orphans";
import { inTime } from "./patience";
import { problemOf, storageError } from "./storageProblem";
import { type Stored, storeWrites } from "./storeWrites";

/** What came of keeping a record: stored, or waiting in this tab with the reason. */
export type Saved =
  | {
      readonly isStored: true;
      /** Sittings among them that have ended elsewhere: nothing was kept of those. */
      readonly ended: ReadonlySet<string>;
    }
  | { readonly isStored: false; readonly problem: LogbookError };

/** How long a database may be silent before that is said, milliseconds. */
const PATIENCE_MS = 5000;

/** Who hears of a logbook, and how long it waits. */
interface LogbookWorld {
  /** Told whenever records, pending ones or the problem changed. */
  readonly onChange?: () => void;
  /** How long a database may be silent, milliseconds. */
  readonly patience_ms?: number;
}

/**
 * The logbook: records in the browser's database, and those that could not be put there waiting in memory.
 *
 * Whatever the database does, practice goes on: a record that cannot be stored is pending, is seen by every query, is
 * part of an export, and is stored by a later `retry`. A record is stored together with its person.
 */
export class Logbook {
  private readonly stored: LogbookDatabase;
  private readonly onChange: () => void;
  private readonly patience_ms: number;
  /** The people that this page knows. */
  readonly people = new KnownPeople();
  private isOpen = false;
  private waiting: readonly LogbookWrite[] = [];
  private trouble: LogbookError | null = null;
  private back: readonly PersonRecord[] = [];

  /** @param stored - not yet open */
  constructor(stored: LogbookDatabase, { onChange = () => {}, patience_ms = PATIENCE_MS }: LogbookWorld = {}) {
    this.stored = stored;
    this.onChange = onChange;
    this.patience_ms = patience_ms;
    stored.on("versionchange", ({ newVersion }) => {
      if (newVersion === null) this.reopen();
      else this.lose(storageError("newer-version", []));
    });
    stored.on("close", () => {
      // Dexie closes by itself after a change of version: that reason holds.
      if (this.isOpen) this.reopen();
    });
  }

  /** Records that wait to be stored, oldest first. */
  get pending(): readonly LogbookWrite[] {
    return this.waiting;
  }

  /** Why records are not stored just now, or null. */
  get problem(): LogbookError | null {
    return this.trouble;
  }

  /** The tables, or null while they cannot be reached. */
  get database(): LogbookDatabase | null {
    return this.isOpen ? this.stored : null;
  }

  /** People who were gone from the tables, and came back because a record of theirs was stored. */
  get restored(): readonly PersonRecord[] {
    return this.back;
  }

  /**
   * Opens the database, or finds out why not; then `problem` says so. Never throws.
   *
   * While another tab blocks it, or it does not answer, the opening goes on, and what is pending is stored as soon as it
   * succeeds.
   */
  async open(): Promise<void> {
    const blocked = new Promise<void>((resolve) => {
      this.stored.on("blocked", () => {
        this.lose(storageError("blocked", []));
        resolve();
      });
    });
    await inTime(Promise.race([this.reach(), blocked]), this.patience_ms, () => {
      this.lose(storageError("no-answer", []));
    });
  }

  /**
   * Keeps records, all in one go: never one without the other, and none without its person. Never throws for a reason of
   * the storage.
   *
   * @throws {RecordError} for a record that could not be read back; then none is kept
   */
  async save(...writes: readonly LogbookWrite[]): Promise<Saved> {
    writes.forEach(checkWrite);
    this.people.know(
      writes.flatMap((write) => (write.kind === "people" && write.only === undefined ? [write.record] : [])),
    );
    const whole = [...this.people.ownersOf(writes), ...writes];
    this.waiting = whole.reduce<readonly LogbookWrite[]>(withWrite, this.waiting);
    const isOne = (one: LogbookWrite) => whole.some((write) => isSameRecord(one, write));
    const saved = await this.store(this.waiting.filter(isOne));
    this.onChange();
    return saved;
  }

  /**
   * Stores records that a page before this one could not, as if they were saved now; else they stay where they are.
   *
   * @throws {LogbookError} when they cannot be stored now either
   */
  async adopt(writes: readonly LogbookWrite[]): Promise<void> {
    writes.forEach(checkWrite);
    this.take(await this.change((database) => storeWrites(database, writes, this.people.replaced)));
    this.onChange();
  }

  /**
   * Tries again to store what is pending. Never throws.
   *
   * @returns how many records still wait
   */
  async retry(): Promise<number> {
    if (!this.isOpen) await inTime(this.reach(), this.patience_ms, () => this.lose(storageError("no-answer", [])));
    else if (this.waiting.length > 0) await this.store(this.waiting);
    this.onChange();
    return this.waiting.length;
  }

  /**
   * Asks the tables.
   *
   * @param otherwise - the answer where they cannot be reached
   * @throws {LogbookError} `storage-failed` and the like when they fail
   */
  async read<Answer>(ask: (database: LogbookDatabase) => PromiseLike<Answer>, otherwise: Answer): Promise<Answer> {
    if (!this.isOpen) return otherwise;
    try {
      return await ask(this.stored);
    } catch (error) {
      throw problemOf(error);
    }
  }

  /**
   * Changes many records at once, all or none.
   *
   * @throws {LogbookError} when the tables cannot be reached or fail; then nothing has changed
   */
  async change<Answer>(act: (database: LogbookDatabase) => Promise<Answer>): Promise<Answer> {
    if (!this.isOpen) throw this.trouble ?? storageError("unavailable", []);
    const { stored } = this;
    try {
      return await stored.transaction("rw", stored.tables, () => act(stored));
    } catch (error) {
      throw problemOf(error);
    } finally {
      this.onChange();
    }
  }

  /** Forgets pending records, after they were deleted. */
  forget(isForgotten: (write: LogbookWrite) => boolean): void {
    this.waiting = this.waiting.filter((write) => !isForgotten(write));
    this.onChange();
  }

  /** Closes the database; records saved later are pending. */
  close(): void {
    this.isOpen = false;
    this.stored.close();
  }

  private async reach(): Promise<void> {
    const { stored } = this;
    try {
      await checkInstalled(stored);
      await stored.open();
      this.isOpen = true;
      this.trouble = null;
      await restoreOwners(this);
      if (this.waiting.length > 0) await this.store(this.waiting);
    } catch (error) {
      this.close();
      this.trouble = problemOf(error, true);
    }
    this.onChange();
  }

  /** The database was deleted or dropped under an open page: it is made anew, for what comes. */
  private reopen(): void {
    this.lose(storageError("emptied", []));
    // Dexie closes the old one first.
    setTimeout(() => void this.reach(), 0);
  }

  /** Stores writes in one transaction and takes them off the pending ones; else says why not. */
  private store(writes: readonly LogbookWrite[]): Promise<Saved> {
    return inTime<Saved, Saved>(this.storeNow(writes), this.patience_ms, () =>
      this.fail(storageError("no-answer", [])),
    );
  }

  private async storeNow(writes: readonly LogbookWrite[]): Promise<Saved> {
    const stored = await this.change((database) => storeWrites(database, writes, this.people.replaced)).catch(
      problemOf,
    );
    if (stored instanceof LogbookError) return this.fail(stored);
    this.take(stored);
    this.waiting = this.waiting.filter((one) => !writes.includes(one));
    const isRetried = this.waiting.length > 0 && this.trouble !== null;
    if (this.waiting.length === 0) this.trouble = null;
    this.onChange();
    // What could not be stored before may go now.
    if (isRetried) await this.storeNow(this.waiting);
    return { isStored: true, ended: stored.ended };
  }

  private fail(problem: LogbookError): Saved {
    this.trouble = problem;
    this.onChange();
    return { isStored: false, problem };
  }

  private take({ restored, standIns }: Stored): void {
    this.back = [...this.back, ...restored];
    this.people.replace(standIns);
  }

  private lose(problem: LogbookError): void {
    this.isOpen = false;
    this.trouble = problem;
    this.onChange();
  }
}
