import { type ActorRefFrom, createActor } from "xstate";
import type { Motion } from "../../../dialing/motion";
import { lostTry } from "../../../drill/marking/lostTry";
import type { TryResult } from "../../../drill/marking/tryResult";
import { type PlannedTry, planTries } from "../../../drill/sheet/planTries";
import type { Sheet, Station } from "../../../drill/sheet/sheet";
import type { AskedQuestion } from "../../../drill/sitting/drawQuestions";
import {
  type SittingEvent,
  type SittingPlan,
  type SittingState,
  sittingMachine,
} from "../../../drill/sitting/sittingMachine";
import { type SittingContext, workedTime } from "../../../drill/sitting/sittingMemory";
import { sittingPlan } from "../../../drill/sitting/sittingPlan";
import { sittingQuestions } from "../../../drill/sitting/sittingQuestions";
import type { Milliseconds } from "../../../lock/dial";
import { motionText } from "../../../records/motion/traceCodec";
import type { RecordedAnswer, SeedOrigin, SittingFacts } from "../../../records/sitting/sittingRecord";
import { seededChance } from "../../../statistics/chance";
import { Store } from "../../parts/page/store";
import type { TryInHand } from "../tries/tryInHand";
import { keptChart } from "./keptChart";
import type { SittingProgress } from "./sittingProgress";
import type { SittingShelf } from "./sittingShelf";

/** A try that has just ended. */
export interface EndedTry {
  readonly one: TryInHand;
  /** Place in the sitting, from 0. */
  readonly index: number;
}

/**
 * What is known of a sitting: its chart, and its progress, which is kept after every event.
 *
 * A store outside React. The time that the sitting goes by is handed in, since it must outlast the page.
 */
export abstract class KeptSitting extends Store {
  readonly sheet: Sheet;
  readonly plan: SittingPlan;
  readonly tries: readonly PlannedTry[];
  readonly questions: readonly AskedQuestion[];
  readonly id: string;
  protected progress: SittingProgress;
  /** Motions of tries that ended in this page, packed. */
  private readonly packed = new Map<number, string>();
  /** How far the clock on the wall is ahead of the time that the sitting goes by. */
  private wallAhead: Milliseconds;
  protected readonly shelf: SittingShelf;
  /** What its screens select from. */
  readonly chart: ActorRefFrom<ReturnType<typeof sittingMachine>>;
  private readonly onKept: (progress: SittingProgress, ended: EndedTry | null) => void;

  /**
   * @param progress - fresh, or as it was kept; then the page was loaded anew
   * @param onKept - told of all that is kept, with the try that has just ended
   */
  constructor(
    progress: SittingProgress,
    shelf: SittingShelf,
    onKept: (progress: SittingProgress, ended: EndedTry | null) => void = () => {},
  ) {
    super();
    const { sheet, seed, snapshot } = progress;
    this.id = progress.id;
    this.sheet = sheet;
    this.shelf = shelf;
    this.onKept = onKept;
    this.progress = progress;
    this.wallAhead = progress.lastWall_ms - progress.lastSeen_ms;
    this.plan = sittingPlan(sheet);
    this.tries = planTries(sheet, seededChance(seed));
    this.questions = sittingQuestions(sheet, seed);
    const machine = sittingMachine(this.plan);
    this.chart =
      snapshot === null
        ? createActor(machine).start()
        : createActor(machine, { snapshot: keptChart(snapshot) }).start();
    if (snapshot !== null) this.revive();
  }

  get state(): SittingState {
    return this.chart.getSnapshot().value;
  }

  get memory(): SittingContext {
    return this.chart.getSnapshot().context;
  }

  get isOver(): boolean {
    return this.state === "finished" || this.state === "brokenOff";
  }

  /** Whether the sheet's clock runs. */
  get isRunning(): boolean {
    return this.memory.runningSince_ms !== null;
  }

  get seed(): number {
    return this.progress.seed;
  }

  get seedFrom(): SeedOrigin {
    return this.progress.seedFrom;
  }

  /** The assignment that a class server gave it for, or null. */
  get assignmentId(): string | null {
    return this.progress.assignmentId;
  }

  /** Who sits it: name, and id in the logbook; null where that is not known yet. */
  get person(): string | null {
    return this.progress.person;
  }

  get personId(): string | null {
    return this.progress.personId;
  }

  /** Whether it has begun and not ended. */
  get isUnderWay(): boolean {
    return !(this.isOver || this.state === "readingInstructions" || this.state === "ready");
  }

  get results(): readonly TryResult[] {
    return this.progress.tries;
  }

  get answers(): readonly RecordedAnswer[] {
    return this.progress.answers;
  }

  /** The question to be answered now, or null. */
  get question(): AskedQuestion | null {
    return this.questions[this.memory.answersGiven] ?? null;
  }

  worked(now: Milliseconds): Milliseconds {
    return workedTime(this.memory, now);
  }

  /** Says who sits it, before it begins. */
  sitAs({ name, id }: { readonly name: string; readonly id: string }): void {
    // One that a class server gave is for whom it was given to.
    if (this.assignmentId !== null) return;
    if (this.state !== "readingInstructions" && this.state !== "ready") return;
    this.progress = { ...this.progress, person: name, personId: id };
    this.changed();
  }

  /** A moment has passed. @param wall - the same moment by the clock on the wall */
  tick(now: Milliseconds, wall: Milliseconds = now): void {
    if (!this.isUnderWay) return;
    this.wallAhead = wall - now;
    this.shelf.keepSeen(now, wall);
    if (!this.isRunning) return;
    this.chart.send({ type: "time.checked", now_ms: now });
    if (!this.isOver) return;
    this.keep(now);
    this.changed();
  }

  /** The machine's clock has jumped. @param by - milliseconds, negative where it was set back */
  noteJump(by: Milliseconds, now: Milliseconds): void {
    if (!this.isUnderWay || by === 0) return;
    const jump = { at_ms: Math.round(this.worked(now)), by_ms: by };
    this.progress = { ...this.progress, clockJumps: [...this.progress.clockJumps, jump] };
    this.keep(now);
    this.changed();
  }

  /** What goes on record, once it is over. */
  facts(appVersion: string): SittingFacts {
    const { seed, seedFrom, extraTime_percent, person, personId, startedAt, clockJumps } = this.progress;
    const { worked_ms, pauses, interruptions, breaks, ended } = this.memory;
    return {
      sheet: this.sheet,
      seed,
      seedFrom,
      appVersion,
      ...(person !== null && { person }),
      ...(personId !== null && { personId }),
      ...(extraTime_percent > 0 && { extraTime_percent }),
      startedAt,
      worked_ms,
      pauses,
      interruptions,
      breaks,
      clockJumps,
      tries: this.results,
      motions: this.results.map((_, index) => this.packed.get(index) ?? this.shelf.packedMotion(index)),
      answers: this.answers,
      ended: ended ?? "broken-off",
    };
  }

  /** A motion goes into the record: it is held here too, for a browser that stores nothing. */
  protected keepMotion(index: number, motion: Motion): void {
    const packed = motionText(motion);
    this.packed.set(index, packed);
    this.shelf.keepMotion(index, packed);
  }

  /** Sends an event, takes in what it brought, and keeps it all before anything else can happen. */
  protected send(event: SittingEvent & { now_ms: Milliseconds }, take: () => EndedTry | null = () => null): void {
    this.chart.send(event);
    this.keep(event.now_ms, take());
    this.changed();
  }

  private keep(now: Milliseconds, ended: EndedTry | null = null): void {
    const keeps = this.progress.keeps + 1;
    const seen = { lastSeen_ms: now, lastWall_ms: now + this.wallAhead };
    this.progress = { ...this.progress, snapshot: this.chart.getPersistedSnapshot(), ...seen, keeps };
    this.shelf.keepProgress(this.progress);
    this.onKept(this.progress, ended);
  }

  private stationOf({ station }: PlannedTry): Station {
    const found = this.sheet.stations[station];
    if (found === undefined) throw new Error(`the sheet has no station ${station}`);
    return found;
  }

  private revive(): void {
    if (this.isOver) return;
    const before = this.memory.triesDone;
    const { lastSeen_ms } = this.progress;
    this.chart.send({ type: "page.reloaded", now_ms: lastSeen_ms });
    const lost = this.tries.slice(before, this.memory.triesDone).map((one) => lostTry(this.stationOf(one), one));
    this.progress = { ...this.progress, tries: [...this.results, ...lost] };
    this.keep(lastSeen_ms);
  }
}
