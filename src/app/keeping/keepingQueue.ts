import type { JobNote } from "../../records/job/jobNote";
import { LogbookError } from "../../records/logbookError";
import type { ZeroingNote } from "../../records/zeroing/zeroingNote";
import type { LogbookWrite } from "../../store/logbookWrite";
import { errorText } from "../../wording/problem";
import { Store } from "../parts/page/store";
import { type PageStore, pageStore } from "../parts/storage/pageStore";
import { forgetLeft, leftNotes } from "./leftNotes";
import type { NotedAttempt } from "./notedAttempt";

/** How safe the records of this page are. */
export interface SavingState {
  /** Records that are not stored. */
  readonly waiting: number;
  /** Why, and what to do, in sentences; null while all is well. */
  readonly problem: string | null;
  /** What to do about it. */
  readonly remedy: "retry" | "reload";
  /** Whether a copy of what waits outlives the page. */
  readonly isCopied: boolean;
}

/** A record as it was taken down, in plain data. */
export type WaitingNote =
  | { readonly kind: "attempt"; readonly note: NotedAttempt }
  | { readonly kind: "zeroing"; readonly note: ZeroingNote }
  | { readonly kind: "job"; readonly note: JobNote };

/** What keeps records, once it has been fetched. */
export interface Keeper {
  readonly openUp: () => Promise<void>;
  readonly keepAttempt: (note: NotedAttempt) => Promise<void>;
  readonly keepZeroing: (note: ZeroingNote) => Promise<void>;
  readonly keepJob: (note: JobNote) => Promise<void>;
  readonly keepFor: (
    personId: string | null,
    writes: (personId: string) => readonly LogbookWrite[],
  ) => Promise<ReadonlySet<string>>;
  readonly keepMissing: Keeper["keepFor"];
  readonly hasEnded: (sittingId: string) => Promise<boolean>;
  readonly dropAttempt: (id: string) => Promise<void>;
  /** Hears how safe the records are, now and after every change. */
  readonly watch: (hear: (state: SavingState) => void) => Promise<void>;
  /** Tries again to store what waits. */
  readonly retry: () => Promise<void>;
  /** Keeps what a page before this one left, whatever it is. */
  readonly keepLeft: (left: unknown) => Promise<void>;
  /** Copies at once, beside the database, what is not stored: the page goes. */
  readonly copyWaiting: () => void;
}

type Keeping = (keeper: Keeper) => Promise<unknown>;

function keepNote(keeper: Keeper, waiting: WaitingNote): Promise<void> {
  switch (waiting.kind) {
    case "attempt":
      return keeper.keepAttempt(waiting.note);
    case "zeroing":
      return keeper.keepZeroing(waiting.note);
    case "job":
      return keeper.keepJob(waiting.note);
  }
}

/** A record on its way: as data where it is data, so that it can outlive the page. */
type Task = { readonly note: WaitingNote } | { readonly keeping: Keeping };

const ALL_WELL: SavingState = { waiting: 0, problem: null, remedy: "retry", isCopied: true };

const FILES_GONE =
  "A file that saves records could not be loaded, perhaps because a new version of Gatefall was started. Reload the page: what waits here is saved then.";

/** Storage that fails is told by the logbook itself, and the record waits there. */
const isToldElsewhere = (error: unknown) => error instanceof LogbookError;

const refusalWords = (error: unknown) =>
  `The latest record is not one that can be saved (${errorText(error)}). Save the logbook as a file, then reload the page and try again.`;

/**
 * Records on their way to the logbook, kept one after the other.
 *
 * The logbook and its database are fetched beside the first screen, before there is a record. Where they cannot be fetched,
 * the records wait here and go with the next one: practice never waits, and never fails for them.
 */
export class KeepingQueue extends Store {
  /** How safe the records of this page are. */
  state: SavingState = ALL_WELL;
  private readonly fetchKeeper: () => Promise<Keeper>;
  private readonly store: PageStore | null;
  private readonly waiting: Task[] = [];
  /** What is being kept. */
  private inHand: Task | null = null;
  private running: Promise<void> = Promise.resolve();
  private keeper: Keeper | null = null;
  /** Why a record was refused for good; it waits nowhere, so it is said until the page closes. */
  private refusal: string | null = null;

  /** @param store - where pages leave what they could not keep; null where the browser has none */
  constructor(fetchKeeper: () => Promise<Keeper>, store = pageStore()) {
    super();
    this.fetchKeeper = fetchKeeper;
    this.store = store;
  }

  /** Fetches what keeps records and opens the logbook, so that no record waits for it. */
  start(): Promise<void> {
    return this.add((keeper) => keeper.openUp());
  }

  /** Takes a record in as plain data. @returns when all that came before it, and it, are kept or wait on */
  keep(note: WaitingNote): Promise<void> {
    return this.take({ note });
  }

  /** Takes in something to be done with the keeper. @returns when all that came before it, and it, are done or wait on */
  add(keeping: Keeping): Promise<void> {
    return this.take({ keeping });
  }

  /** Tries again to store what waits, wherever it waits. */
  async retry(): Promise<void> {
    await this.add((keeper) => keeper.retry());
  }

  /** Records that are not kept yet as plain data: the one that is being stored, and those that wait here. */
  get notes(): readonly WaitingNote[] {
    const tasks = this.inHand === null ? this.waiting : [this.inHand, ...this.waiting];
    return tasks.flatMap((task) => ("note" in task ? [task.note] : []));
  }

  /** Copies at once what the keeper has not stored; what waits here is in `notes`. */
  copyWaiting(): void {
    this.keeper?.copyWaiting();
  }

  private take(task: Task): Promise<void> {
    this.waiting.push(task);
    this.running = this.running.then(() => this.keepAll());
    return this.running;
  }

  private async keepAll(): Promise<void> {
    const keeper = await this.keeperNow();
    if (keeper === null) return;
    for (let next = this.waiting.shift(); next !== undefined; next = this.waiting.shift()) {
      this.inHand = next;
      await this.keepTask(keeper, next);
      this.inHand = null;
    }
  }

  private async keepTask(keeper: Keeper, task: Task): Promise<void> {
    const kept = "note" in task ? keepNote(keeper, task.note) : task.keeping(keeper);
    await kept.catch((error: unknown) => this.refuse(error));
  }

  private async keeperNow(): Promise<Keeper | null> {
    if (this.keeper !== null) return this.keeper;
    const keeper = await this.fetchKeeper().catch(() => null);
    if (keeper === null) {
      this.hear({ waiting: this.notes.length, problem: FILES_GONE, remedy: "reload", isCopied: true });
      return null;
    }
    this.keeper = keeper;
    await keeper.watch((state) => this.hear(state)).catch(() => undefined);
    const left = leftNotes(this.store);
    await keeper.keepLeft([...left.values()]).catch(() => undefined);
    forgetLeft(left, this.store);
    return keeper;
  }

  private refuse(error: unknown): void {
    if (isToldElsewhere(error)) return;
    this.refusal = refusalWords(error);
    this.hear(this.state);
  }

  private hear(state: SavingState): void {
    this.state = { ...state, problem: state.problem ?? this.refusal };
    this.changed();
  }
}
