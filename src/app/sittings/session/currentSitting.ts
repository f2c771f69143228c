import { parseSheet } from "../../../drill/sheet/parseSheet";
import type { Sheet } from "../../../drill/sheet/sheet";
import { sittingPlan } from "../../../drill/sitting/sittingPlan";
import type { Milliseconds } from "../../../lock/dial";
import { type GivenHere, SITTING_SLOT } from "../../keeping/sittingSlot";
import { messageOf } from "../../parts/page/messageOf";
import { newId } from "../../parts/page/newId";
import { newSeed } from "../../parts/page/newSeed";
import { onPageLeft } from "../../parts/page/onPageLeft";
import { Store } from "../../parts/page/store";
import { watchWork } from "../../parts/page/underWay";
import type { KeptRecord } from "../../verdicts/keptRecord";
import { practicing, recordOf, sittingsKnown } from "./askedOfLogbook";
import { type RunningSitting, SittingKeeping } from "./sittingKeeping";
import { newProgress, type SittingProgress, sittingToGoOn } from "./sittingProgress";
import { SittingSession } from "./sittingSession";
import { PROGRESS_KEY, SittingShelf } from "./sittingShelf";
import { pageTime } from "./steadyTime";

/** The seed of a new sitting, and where it is from. */
function seedFor(sheet: Sheet, asked: number | null): Pick<SittingProgress, "seed" | "seedFrom"> {
  if (sheet.seed !== undefined) return { seed: sheet.seed, seedFrom: "sheet" };
  return asked === null ? { seed: newSeed(), seedFrom: "drawn" } : { seed: asked, seedFrom: "address" };
}

/** How often the clock of a sitting is looked at, milliseconds. */
const TICK: Milliseconds = 500;

/** The sitting of this page: one at a time, whichever screen is shown, so that its clock runs on. */
export class CurrentSitting extends Store {
  readonly shelf = new SittingShelf();
  session: SittingSession | null = null;
  /** The record of the session, once it is over and hashed. */
  kept: KeptRecord | null = null;
  /** Id of a sitting that this page would have gone on with, and that the logbook has with its end; or null. */
  endedId: string | null = null;
  /** Why there is no record, or null. */
  problem: string | null = null;
  /** Whether it is known yet if a sitting goes on here. */
  isSettled = false;
  private keeping: SittingKeeping | null = null;
  private isRecording = false;

  constructor() {
    super();
    this.takeUp();
    SITTING_SLOT.show(this);
    watchWork(() => this.lostByReload);
    setInterval(() => this.tick(pageTime.now()), TICK);
    onPageLeft(() => this.keepInHand(pageTime.now()));
    addEventListener("storage", ({ key }) => {
      if (key === PROGRESS_KEY) this.letGo();
    });
  }

  /** What a reload would end of the sitting, a sentence; null where none is under way. */
  get lostByReload(): string | null {
    const { session } = this;
    if (session === null || !session.isUnderWay) return null;
    const title = `"${session.sheet.title}"`;
    if (session.plan.onReload === "broken-off") return `The sitting ${title} ends and is recorded as broken off.`;
    const lost = session.memory.isTryBegun ? "The try you are in is lost, and the" : "The";
    return `${lost} sitting ${title} waits until you go on${session.plan.pauseAllowed ? "" : ", while its clock runs"}.`;
  }

  /** Whether there is no sitting, or one that has not begun. */
  get isFree(): boolean {
    const isEmpty = this.session === null && this.endedId === null;
    return (
      this.isSettled &&
      (isEmpty || (this.session !== null && ["readingInstructions", "ready"].includes(this.session.state)))
    );
  }

  /**
   * Sets a sitting up; it is kept from its start on. Each has a seed of its own, unless its sheet sets one.
   *
   * @param seed - as the address gives it, to see the same again: for practice; else null
   */
  async begin(sheet: Sheet, seed: number | null): Promise<void> {
    const who = await practicing();
    const [person, personId] = [who?.name ?? null, who?.id ?? null];
    pageTime.begin();
    this.open(newProgress({ id: newId(), sheet, ...seedFor(sheet, seed), person, personId }));
  }

  /** Sets up a sitting that a class server gave, in place of one that has not begun. */
  beginGiven(given: GivenHere): void {
    pageTime.begin();
    this.open(newProgress({ ...given, sheet: parseSheet(given.sheet) }));
  }

  /** The clock of the sitting runs from now on. */
  start(): void {
    if (this.session?.state !== "ready") return;
    pageTime.begin();
    this.session.start(pageTime.now());
  }

  /** Puts a sitting away: one that is over, or was never started. */
  putAway(): void {
    if (this.session !== null) this.shelf.clear(this.session.tries.length);
    this.show({});
  }

  /** Goes on with the sitting of a page before this one, and ends any other that was left. */
  private async takeUp(): Promise<void> {
    const text = this.shelf.progress;
    const { running, hasEnded } = await sittingsKnown(text?.id ?? null);
    if (text !== null && hasEnded) this.showEnd(text);
    const progress = sittingToGoOn(
      hasEnded ? null : text,
      running.map((one) => one.progress),
    );
    this.isSettled = true;
    if (progress !== null) this.open(progress);
    this.changed();
    for (const one of running) {
      if (one.progress.id !== progress?.id) await this.breakOff(one).catch(() => undefined);
    }
  }

  /** A sitting that no page will go on with is on record as broken off. */
  private async breakOff({ progress, personId }: RunningSitting): Promise<void> {
    const session = new SittingSession(progress, new SittingShelf(null));
    session.abandon(progress.lastSeen_ms);
    const now_ms = Math.max(pageTime.now(), progress.lastSeen_ms);
    new SittingKeeping({ ...progress, personId }).noteEnd(await recordOf(session), now_ms);
  }

  /** Another tab has gone on with the sitting: there must be one clock and one hand only. */
  private letGo(): void {
    const problem = "another tab has opened it. Close that tab, then reload this page to go on here";
    this.show({ endedId: this.endedId, problem });
  }

  /** The logbook has the sitting with its end, and that is final: the text is dropped, and the end is shown. */
  private showEnd({ id, sheet }: Pick<SittingProgress, "id" | "sheet">): void {
    this.shelf.clear(sittingPlan(sheet).tries);
    this.show({ endedId: id });
  }

  /** What there is to show from now on, in place of all that was shown. */
  private show(shown: Partial<Pick<CurrentSitting, "session" | "kept" | "endedId" | "problem">>): void {
    Object.assign(this, { session: null, kept: null, endedId: null, problem: null, ...shown });
    this.changed();
  }

  private open(progress: SittingProgress): void {
    try {
      const keeping = new SittingKeeping(progress, () => {
        if (this.session?.id === progress.id && !this.session.isOver) this.showEnd(progress);
      });
      const session = new SittingSession(progress, this.shelf, (now, ended) =>
        keeping.note(now, ended, pageTime.now()),
      );
      if (session.isUnderWay) {
        const setBack = pageTime.goOnFrom(progress.lastSeen_ms, progress.lastWall_ms);
        session.noteJump(setBack, pageTime.now());
      }
      session.subscribe(() => this.noteEnd(session));
      this.keeping = keeping;
      this.show({ session });
      if (progress.tries.length > 0) keeping.noteMissing(session, this.shelf, progress.lastSeen_ms);
      this.noteEnd(session);
    } catch (error) {
      this.problem = messageOf(error);
    }
    this.changed();
  }

  private tick(noticed: number): void {
    const jump = pageTime.takeJump();
    this.session?.noteJump(jump, noticed);
    // A machine that sleeps is no pause where the sheet allows none.
    if (this.session?.plan.pauseAllowed === false) pageTime.catchUp(jump);
    const now = pageTime.now();
    this.session?.tick(now, pageTime.wall());
    this.keepInHand(now);
  }

  private keepInHand(now: number): void {
    if (this.session !== null) this.keeping?.noteInHand(this.session, now);
  }

  private async noteEnd(session: SittingSession): Promise<void> {
    if (!session.isOver || this.kept?.id === session.id || this.isRecording) return;
    this.isRecording = true;
    try {
      const kept = await recordOf(session);
      this.kept = kept;
      this.shelf.keepRecord(kept);
      this.keeping?.noteEnd(kept, pageTime.now());
    } catch (error) {
      this.problem = messageOf(error);
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

/** Forgets what this browser keeps of sittings beside the logbook, after their person was deleted. */
export function forgetSittings(ids: ReadonlySet<string>): void {
  const session = current?.session ?? null;
  if (current !== null && session !== null && ids.has(session.id)) current.putAway();
  (current?.shelf ?? new SittingShelf()).forget(ids);
}
