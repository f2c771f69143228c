import type { Sheet } from "../../drill/sheet/sheet";
import { recordHash, sittingRecord } from "../../drill/sittingRecord";
import type { Milliseconds } from "../../lock/dial";
import type { LogbookWrite } from "../../logbook/logbookWrite";
import { Store } from "../shell/store";
import { browserSha256 } from "./recordFile";
import { sittingWrite, tryWrite } from "./sittingLogbook";
import { newProgress, type SittingProgress } from "./sittingProgress";
import { SittingSession, type TryInHand } from "./sittingSession";
import { type KeptRecord, PROGRESS_KEY, SittingShelf, type TextStore } from "./sittingShelf";

/** Put in when the page is built. */
const APP_VERSION = String(import.meta.env.APP_VERSION);

/** A browser may refuse even to name its storage. */
function browserStore(): TextStore {
  try {
    return localStorage;
  } catch {
    const refuse = () => {
      throw new Error("this browser keeps nothing");
    };
    return { getItem: () => null, setItem: refuse, removeItem: refuse };
  }
}

/** Fetched when first needed, so that the screen does not wait for the database. */
const openLogbook = async () => (await import("../logbook/currentLogbook")).currentLogbook();

/** Gives a write to the logbook, for whoever practices now; where nobody is chosen, the browser's own record stands. */
async function keepInLogbook(make: (personId: string) => LogbookWrite): Promise<void> {
  const { logbook, person } = await openLogbook();
  if (person !== null) await logbook.save(make(person.id));
}

/** A start does not wait longer than this for the logbook, milliseconds. */
const LOGBOOK_WAIT: Milliseconds = 1500;

/** Who practices now; null where nobody is chosen, or the logbook does not open in time. */
async function personName(): Promise<string | null> {
  const tooLate = new Promise<null>((resolve) => setTimeout(() => resolve(null), LOGBOOK_WAIT));
  const named = openLogbook().then(({ person }) => person?.name ?? null);
  return Promise.race([named.catch(() => null), tooLate]);
}

/** The sitting of this page: one at a time, whichever screen is shown, so that its clock runs on. */
export class CurrentSitting extends Store {
  readonly shelf = new SittingShelf(browserStore());
  session: SittingSession | null = null;
  /** The record of the session, once it is over and hashed. */
  kept: KeptRecord | null = null;
  /** Why there is no record, or null. */
  problem: string | null = null;

  constructor() {
    super();
    const kept = this.shelf.progress;
    if (kept !== null) this.open(kept);
    setInterval(() => this.session?.tick(Date.now()), 500);
    addEventListener("storage", ({ key }) => {
      if (key === PROGRESS_KEY) this.letGo();
    });
  }

  /** Whether there is no sitting, or one that has not begun. */
  get isFree(): boolean {
    return this.session === null || ["readingInstructions", "ready"].includes(this.session.state);
  }

  /** Sets a sitting up; it is kept from its start on. */
  async begin(sheet: Sheet, seed: number): Promise<void> {
    this.open(newProgress({ id: crypto.randomUUID(), sheet, seed, person: await personName() }));
  }

  /** Puts a sitting away: one that is over, or was never started. */
  putAway(): void {
    if (this.session !== null) this.shelf.clear(this.session.tries.length);
    this.session = null;
    this.kept = null;
    this.problem = null;
    this.changed();
  }

  /** Another tab has gone on with the sitting: there must be one clock and one hand only. */
  private letGo(): void {
    this.session = null;
    this.kept = null;
    this.problem = "another tab has taken this sitting over; reload this page to take it back";
    this.changed();
  }

  private open(progress: SittingProgress): void {
    try {
      const onTry = (one: TryInHand, index: number) => this.noteTry(progress.id, one, index);
      const session = new SittingSession(progress, this.shelf, onTry);
      session.subscribe(() => this.noteEnd(session));
      this.session = session;
      this.kept = null;
      this.problem = null;
      this.noteEnd(session);
    } catch (error) {
      this.problem = error instanceof Error ? error.message : String(error);
    }
    this.changed();
  }

  private noteTry(sittingId: string, one: TryInHand, index: number): void {
    const now_ms = Date.now();
    keepInLogbook((personId) => tryWrite(one, { sittingId, personId, index, now_ms })).catch(() => {
      // The sitting's own record holds the try.
    });
  }

  private isRecording = false;

  private async noteEnd(session: SittingSession): Promise<void> {
    if (!session.isOver || this.kept?.id === session.id || this.isRecording) return;
    this.isRecording = true;
    try {
      const record = await sittingRecord(session.facts(APP_VERSION), browserSha256);
      const kept = { id: session.id, record, sha256: await recordHash(record, browserSha256) };
      this.kept = kept;
      this.shelf.keepRecord(kept);
      keepInLogbook((personId) => sittingWrite(kept, personId, Date.now())).catch(() => {
        // The browser's own list holds the record.
      });
    } catch (error) {
      this.problem = error instanceof Error ? error.message : String(error);
    }
    this.isRecording = false;
    this.changed();
  }
}

let current: CurrentSitting | null = null;

/** The sitting of this page, taken up again where a page before it left off. */
export function currentSitting(): CurrentSitting {
  current ??= new CurrentSitting();
  return current;
}
