import { installedVersion } from "./installedVersion";
import { DATABASE_VERSION, type LogbookDatabase } from "./logbookDatabase";
import { LogbookError } from "./logbookError";
import { checkWrite, isSameRecord, type LogbookWrite, storeWrites, withWrite } from "./logbookWrite";
import { problemOf, storageProblem } from "./storageProblem";

/** What came of keeping a record: stored, or waiting in this tab with the reason. */
export type Saved =
  | {
      readonly isStored: true /** Sittings among them that have ended elsewhere: nothing was kept of those. */;
      readonly ended: ReadonlySet<string>;
    }
  | { readonly isStored: false; readonly problem: LogbookError };

/** Dexie counts in units, the browser in tenths. */
const BROWSER_VERSIONS = 10;

/**
 * The logbook: records in the browser's database, and those that could not be put there waiting in memory.
 *
 * Whatever the database does, practice goes on: a record that cannot be stored is pending, is seen by every query, is
 * part of an export, and is stored by a later `retry`.
 */
export class Logbook {
  private readonly stored: LogbookDatabase;
  private readonly onChange: () => void;
  private isOpen = false;
  private waiting: readonly LogbookWrite[] = [];
  private trouble: LogbookError | null = null;

  /**
   * @param stored - not yet open
   * @param onChange - told whenever records, pending ones or the problem changed
   */
  constructor(stored: LogbookDatabase, onChange: () => void = () => {}) {
    this.stored = stored;
    this.onChange = onChange;
    stored.on("versionchange", () => this.lose(storageProblem("newer-version")));
    stored.on("close", () => {
      // Dexie closes by itself after a change of version: that reason stands.
      if (this.isOpen) this.lose(storageProblem("unavailable"));
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

  /**
   * Opens the database, or finds out why not; then `problem` says so. Never throws.
   *
   * While another tab blocks it the opening goes on, and what is pending is stored as soon as it succeeds.
   */
  open(): Promise<void> {
    return new Promise((resolve) => {
      this.stored.on("blocked", () => {
        this.lose(storageProblem("blocked"));
        resolve();
      });
      this.reach().then(resolve);
    });
  }

  /**
   * Keeps records, all in one go: never one without the other. Never throws for a reason of the storage.
   *
   * @throws {LogbookError} `bad-record` for a record that could not be read back; then none is kept
   */
  async save(...writes: readonly LogbookWrite[]): Promise<Saved> {
    writes.forEach(checkWrite);
    this.waiting = writes.reduce<readonly LogbookWrite[]>(withWrite, this.waiting);
    const isOne = (one: LogbookWrite) => writes.some((write) => isSameRecord(one, write));
    const saved = await this.store(this.waiting.filter(isOne));
    this.onChange();
    return saved;
  }

  /**
   * Tries again to store what is pending. Never throws.
   *
   * @returns how many records still wait
   */
  async retry(): Promise<number> {
    if (!this.isOpen) await this.reach();
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
    if (!this.isOpen) throw this.trouble ?? storageProblem("unavailable");
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
      if (stored.host === undefined) throw storageProblem("unavailable");
      const version = (await installedVersion(stored.host, stored.name)) / BROWSER_VERSIONS;
      if (version > DATABASE_VERSION) throw storageProblem("newer-version");
      await stored.open();
      this.isOpen = true;
      this.trouble = null;
      if (this.waiting.length > 0) await this.store(this.waiting);
    } catch (error) {
      this.close();
      this.trouble = problemOf(error, true);
    }
    this.onChange();
  }

  /** Stores writes in one transaction and takes them off the pending ones; else tells why not. */
  private async store(writes: readonly LogbookWrite[]): Promise<Saved> {
    const saved = await this.change((database) => storeWrites(database, writes)).catch(problemOf);
    if (saved instanceof LogbookError) {
      this.trouble = saved;
      return { isStored: false, problem: saved };
    }
    this.waiting = this.waiting.filter((one) => !writes.some((write) => one === write || isOutdated(one, write)));
    if (this.waiting.length === 0) this.trouble = null;
    return { isStored: true, ended: saved };
  }

  private lose(problem: LogbookError): void {
    this.isOpen = false;
    this.trouble = problem;
    this.onChange();
  }
}

const isOutdated = (one: LogbookWrite, stored: LogbookWrite) =>
  isSameRecord(one, stored) && one.record.updatedAt < stored.record.updatedAt;

/** Where a browser promises not to clear what is kept: `navigator.storage`. */
export interface StorageKeeper {
  readonly persisted: () => Promise<boolean>;
  readonly persist: () => Promise<boolean>;
}

/**
 * Asks the browser to keep the records even when room is short.
 *
 * @param keeper - undefined where the browser knows no such promise
 * @returns whether it promises, and `unknown` where it cannot be asked
 */
export async function askToPersist(keeper: StorageKeeper | undefined): Promise<"kept" | "refused" | "unknown"> {
  if (keeper === undefined) return "unknown";
  try {
    return (await keeper.persisted()) || (await keeper.persist()) ? "kept" : "refused";
  } catch {
    return "unknown";
  }
}
