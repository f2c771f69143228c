import { type ActorRefFrom, createActor } from "xstate";
import type { Motion } from "../../dialing/motion";
import { lostTry } from "../../drill/marking/lostTry";
import type { TryResult } from "../../drill/marking/tryResult";
import { type AskedQuestion, isAnsweredRight } from "../../drill/questions/drawQuestions";
import { sittingQuestions } from "../../drill/questions/sittingQuestions";
import { type PlannedTry, planTries } from "../../drill/sheet/planTries";
import type { Sheet, Station } from "../../drill/sheet/sheet";
import {
  type SittingContext,
  type SittingEvent,
  type SittingPlan,
  type SittingState,
  sittingMachine,
  workedTime,
} from "../../drill/sittingMachine";
import { sittingPlan } from "../../drill/sittingPlan";
import type { Graduations, Milliseconds } from "../../lock/dial";
import { motionText } from "../../records/motion/traceCodec";
import type { RecordedAnswer, SeedOrigin, SittingFacts } from "../../records/sitting/sittingRecord";
import { seededChance } from "../../statistics/chance";
import { Store } from "../parts/page/store";
import { keptChart } from "./keptChart";
import type { SittingProgress } from "./sittingProgress";
import type { SittingShelf } from "./sittingShelf";
import { isDialTry, makeTry, type TryInHand } from "./tries/tryInHand";
import { trySetup } from "./tries/trySetup";

/** A try that has just ended. */
export interface EndedTry {
  readonly one: TryInHand;
  /** Place in the sitting, from 0. */
  readonly index: number;
}

/**
 * One sitting from its instructions to its end: the chart, the try in hand, and what is kept after every event.
 *
 * A store outside React. The time that the sitting goes by is handed in, since it must outlast the page; the hand has its
 * own clock, which need not.
 */
export class SittingSession extends Store {
  readonly sheet: Sheet;
  readonly plan: SittingPlan;
  readonly tries: readonly PlannedTry[];
  readonly questions: readonly AskedQuestion[];
  readonly id: string;
  /** The try in hand; an ended one stays until the next is asked for. */
  inHand: TryInHand | null = null;
  private progress: SittingProgress;
  /** Motions of tries that ended in this page, packed. */
  private readonly packed = new Map<number, string>();
  /** How far the clock on the wall is ahead of the time that the sitting goes by. */
  private wallAhead: Milliseconds;
  private readonly shelf: SittingShelf;
  private readonly actor: ActorRefFrom<ReturnType<typeof sittingMachine>>;
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
    this.actor =
      snapshot === null
        ? createActor(machine).start()
        : createActor(machine, { snapshot: keptChart(snapshot) }).start();
    if (snapshot !== null) this.revive();
  }

  get state(): SittingState {
    return this.actor.getSnapshot().value;
  }

  get memory(): SittingContext {
    return this.actor.getSnapshot().context;
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

  /** Place of the try in hand, from 0. */
  get tryIndex(): number {
    return this.inHand?.isEnded ? this.memory.triesDone - 1 : this.memory.triesDone;
  }

  worked(now: Milliseconds): Milliseconds {
    return workedTime(this.memory, now);
  }

  readInstructions(): void {
    this.actor.send({ type: "instructions.read" });
    this.changed();
  }

  /** Says who sits it, before it begins. */
  sitAs({ name, id }: { readonly name: string; readonly id: string }): void {
    if (this.state !== "readingInstructions" && this.state !== "ready") return;
    this.progress = { ...this.progress, person: name, personId: id };
    this.changed();
  }

  start(now: Milliseconds): void {
    this.progress = { ...this.progress, startedAt: new Date(now).toISOString() };
    this.send({ type: "sitting.started", now_ms: now });
    this.takeNext();
  }

  /** Puts the next try under the hand. */
  takeNext(): void {
    const index = this.memory.triesDone;
    const plan = this.tries[index];
    this.inHand = this.state === "atStation" && plan !== undefined ? this.tryFor(plan, index) : null;
    this.changed();
  }

  /** Turns the dial of the try in hand. */
  turnBy(by: Graduations, at: Milliseconds, now: Milliseconds): void {
    this.handled(now, (one) => isDialTry(one) && one.turnBy(by, at));
  }

  takeReading(at: Milliseconds, now: Milliseconds): void {
    this.handled(now, (one) => one.kind === "zeroing" && one.takeReading(at));
  }

  /** Lets time pass over a resting hand. */
  rest(at: Milliseconds, now: Milliseconds): void {
    this.handled(now, (one) => one.kind === "dialing" && one.rest(at));
  }

  /** Lets time pass over a light dial that runs on. */
  runOn(at: Milliseconds, now: Milliseconds): void {
    this.handled(now, (one) => isDialTry(one) && one.runOn(at));
  }

  /** The job in hand has been worked on its own screen. */
  noteWork(at: Milliseconds, now: Milliseconds): void {
    this.handled(now, (one) => !isDialTry(one) && one.worked(at));
  }

  /** The candidate says that the try is done. */
  endTry(now: Milliseconds): void {
    this.handled(now, (one) => one.end());
  }

  /** Answers the question. @param shown - place of the choice, as shown */
  answer(shown: number, now: Milliseconds): void {
    const asked = this.question;
    const choice = asked?.order[shown];
    if (asked === null || choice === undefined || this.state !== "answering") return;
    const before = this.memory.answersGiven;
    const answer = { questionId: asked.question.id, choice, isRight: isAnsweredRight(asked, shown) };
    this.send({ type: "question.answered", now_ms: now }, () => {
      if (this.memory.answersGiven === before) return null;
      this.progress = { ...this.progress, answers: [...this.answers, answer] };
      this.shelf.keepAnswer(answer);
      return null;
    });
  }

  pause(now: Milliseconds): void {
    this.send({ type: "sitting.paused", now_ms: now });
  }

  resume(now: Milliseconds): void {
    this.send({ type: "sitting.resumed", now_ms: now });
    this.takeNext();
  }

  abandon(now: Milliseconds): void {
    this.send({ type: "sitting.abandoned", now_ms: now });
  }

  /** A moment has passed. @param wall - the same moment by the clock on the wall */
  tick(now: Milliseconds, wall: Milliseconds = now): void {
    if (!this.isUnderWay) return;
    this.wallAhead = wall - now;
    this.shelf.keepSeen(now, wall);
    if (!this.isRunning) return;
    this.actor.send({ type: "time.checked", now_ms: now });
    if (this.isOver) this.keep(now);
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
    const { seed, seedFrom, person, personId, startedAt, clockJumps } = this.progress;
    const { worked_ms, pauses, interruptions, breaks, ended } = this.memory;
    return {
      sheet: this.sheet,
      seed,
      seedFrom,
      appVersion,
      ...(person !== null && { person }),
      ...(personId !== null && { personId }),
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
  private keepMotion(index: number, motion: Motion): void {
    const packed = motionText(motion);
    this.packed.set(index, packed);
    this.shelf.keepMotion(index, packed);
  }

  private tryFor(plan: PlannedTry, index: number): TryInHand {
    return makeTry(trySetup(this.sheet, plan, this.progress.seed, index));
  }

  /** Does something with the try in hand, and tells the chart when that begins or ends it. */
  private handled(now: Milliseconds, act: (one: TryInHand) => unknown): void {
    const one = this.inHand;
    if (one === null || one.isEnded || this.state !== "atStation") return;
    const version = one.version;
    act(one);
    if (one.version === version) return;
    if (!this.memory.isTryBegun) this.send({ type: "try.begun", now_ms: now });
    if (one.isEnded) this.finishTry(one, now);
    this.changed();
  }

  private finishTry(one: TryInHand, now: Milliseconds): void {
    const index = this.memory.triesDone;
    this.send({ type: "try.finished", now_ms: now }, () => {
      if (this.memory.triesDone === index) return null;
      this.progress = { ...this.progress, tries: [...this.results, one.result()] };
      if (one.kind === "dialing") this.keepMotion(index, one.motion);
      return { one, index };
    });
  }

  /** Sends an event, takes in what it brought, and keeps it all before anything else can happen. */
  private send(event: SittingEvent & { now_ms: Milliseconds }, take: () => EndedTry | null = () => null): void {
    this.actor.send(event);
    this.keep(event.now_ms, take());
    this.changed();
  }

  private keep(now: Milliseconds, ended: EndedTry | null = null): void {
    const keeps = this.progress.keeps + 1;
    const seen = { lastSeen_ms: now, lastWall_ms: now + this.wallAhead };
    this.progress = { ...this.progress, snapshot: this.actor.getPersistedSnapshot(), ...seen, keeps };
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
    this.actor.send({ type: "page.reloaded", now_ms: lastSeen_ms });
    const lost = this.tries.slice(before, this.memory.triesDone).map((one) => lostTry(this.stationOf(one), one));
    this.progress = { ...this.progress, tries: [...this.results, ...lost] };
    this.keep(lastSeen_ms);
  }
}
