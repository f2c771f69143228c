import { admitsSource } from "../../../drill/marking/isAdmitted";
import { isBegunAgain } from "../../../drill/marking/lostSight";
import type { PlannedTry } from "../../../drill/sheet/planTries";
import { isAnsweredRight } from "../../../drill/sitting/drawQuestions";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import type { DialDoubt } from "../../../realdial/sources/dialDoubt";
import type { SourceDescription } from "../../../realdial/sources/sourceDescription";
import { SCREEN_SOURCE } from "../../../realdial/sources/sourcesSeen";
import type { DialingTry } from "../tries/dialingTry";
import { isDialTry, makeTry, type TryInHand } from "../tries/tryInHand";
import { trySetup } from "../tries/trySetup";
import { KeptSitting } from "./keptSitting";
import { dialedOutcome } from "./sittingLogbook";

/** One sitting from its instructions to its end, with the try in hand, which has a clock of its own. */
export class SittingSession extends KeptSitting {
  /** The try in hand; an ended one stays until the next is asked for. */
  inHand: TryInHand | null = null;
  /** What was kept from turning the dial last, since its station does not admit it; null once something else turned it. */
  refused: SourceDescription | null = null;

  /** Place of the try in hand, from 0. */
  get tryIndex(): number {
    return this.inHand?.isEnded ? this.memory.triesDone - 1 : this.memory.triesDone;
  }

  readInstructions(): void {
    this.chart.send({ type: "instructions.read" });
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
    this.refused = null;
    this.inHand = this.state === "atStation" && plan !== undefined ? this.tryFor(plan, index) : null;
    this.changed();
  }

  /**
   * Whether something may turn the dial of the try in hand: what its station does not admit, turns nothing. It is taken down
   * with the try.
   *
   * @param source - the hands on the screen where left out
   */
  admits(source: SourceDescription = SCREEN_SOURCE): boolean {
    const one = this.inHand;
    const isAdmitted = one === null || admitsSource(source, one.setup.station);
    const refused = isAdmitted ? null : source;
    if (refused?.kind !== this.refused?.kind) {
      this.refused = refused;
      this.changed();
    }
    return isAdmitted && (one === null || !isDialTry(one) || one.noteSource(source));
  }

  /** A device lost the hand: by its station the try goes on, marked, or is begun again. @returns whether it is marked */
  noteDoubt(why: DialDoubt, now: Milliseconds): boolean {
    const one = this.inHand;
    if (one === null || !isDialTry(one) || one.isEnded || !one.noteDoubt(why)) return false;
    if (!isBegunAgain(one.setup.station, one.setup.begunAgain)) return true;
    this.send({ type: "try.begunAgain", now_ms: now });
    this.takeNext();
    return false;
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

  private tryFor(plan: PlannedTry, index: number): TryInHand {
    return makeTry(trySetup(this.sheet, plan, this.progress.seed, index, this.memory.begunAgain));
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

  /** What of a try at dialing outlasts a kill: its motion, or what it came to where its motion may not be kept. */
  private keepDialed(index: number, one: DialingTry): void {
    if (one.turnedBy.mayKeepMotion) this.keepMotion(index, one.motion);
    else this.shelf.keepOutcome(index, dialedOutcome(one, one.result()));
  }

  private finishTry(one: TryInHand, now: Milliseconds): void {
    const index = this.memory.triesDone;
    this.send({ type: "try.finished", now_ms: now }, () => {
      if (this.memory.triesDone === index) return null;
      this.progress = { ...this.progress, tries: [...this.results, one.result()] };
      if (one.kind === "dialing") this.keepDialed(index, one);
      return { one, index };
    });
  }
}
