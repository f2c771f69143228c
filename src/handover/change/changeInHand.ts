import type { Attempt, HandledLock } from "../../dialing/attempt";
import type { DialingFact } from "../../dialing/dialingFact";
import type { DialingEvent } from "../../dialing/dialingMachine";
import { type Combination, parseCombination } from "../../lock/combination";
import type { Graduations, Milliseconds } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import type { TrainEnd } from "../../lock/train/lockTrain";
import type { ChangeFact } from "./changeFact";
import type { EncoderChangeState } from "./encoderChangeMachine";
import type { KeyRefusal } from "./keyedPack";
import type { PackChangeState } from "./packChangeMachine";
import type { Proof } from "./proof";
import type { ChangeContext } from "./provingChart";

/** Where a change of either kind is. */
export type ChangeState = PackChangeState | EncoderChangeState;

/** What a hand does to a change besides turning the dial. */
export type ChangeAct =
  | "insertKey"
  | "turnKey"
  | "turnKeyBack"
  | "withdrawKey"
  | "changeAgain"
  | "pressButton"
  | "shutDoor";

/** Why an act does nothing; of the change button: the bolt is not back, or the lock is already taking new numbers. */
export type ActRefusal = KeyRefusal | "bolt-out" | "already-pressed" | "key-in-door";

/** What happens in a change: in the work itself, and in the dialing of the numbers asked for now. */
export type ChangeEvent = ChangeFact | DialingEvent;

/** What came of an act: facts, or why it did nothing. */
export interface ActAnswer {
  readonly facts: readonly ChangeEvent[];
  readonly refusal: ActRefusal | null;
}

/** The chart of a change of either kind, as the lock under it goes by it. */
interface ChangeChart {
  send(fact: ChangeFact): void;
  getSnapshot(): { readonly value: ChangeState; readonly context: ChangeContext };
}

/**
 * A change of combination, from the present one to the proofs of the new one, under one hand.
 *
 * Its chart says where it is, and is told here and nowhere else; beside it there are only mechanics. What the hand dials is
 * told to whoever turns it, as of any lock. The present and the new combination are what the trainee means. Mutable.
 */
export abstract class ChangeInHand<Kind extends Profile> implements TrainEnd<ChangeEvent> {
  readonly profile: Kind;
  readonly present: Combination;
  readonly wanted: Combination;
  abstract readonly chart: ChangeChart;
  /** Tries of the new combination; null until it is set and can be tried. */
  proof: Proof | null = null;
  private news: ChangeFact[] = [];

  /**
   * @param present - what the lock is set to, and known to be
   * @param wanted - the new combination
   * @throws {LockError} for one that cannot be dialed
   */
  constructor(profile: Kind, present: Combination, wanted: Combination) {
    this.profile = profile;
    this.present = parseCombination(profile, present);
    this.wanted = parseCombination(profile, wanted);
  }

  /** What opens the lock now, graduations; null where nothing does. */
  abstract readonly setCombination: Combination | null;
  /** Unwrapped dial position, graduations. */
  abstract readonly dial: Graduations;
  /** How far the bolt is drawn back, 0 to 1. */
  abstract readonly retraction: number;
  /** The hand as it is read now: at the index in use, for the numbers asked for now. */
  abstract readonly hand: HandledLock;
  /** The try under way at the opening index, or null while there is none. */
  abstract readonly attempt: Attempt | null;

  get state(): ChangeState {
    return this.chart.getSnapshot().value;
  }

  /** Openings in a row that prove the new combination so far. */
  get proofs(): number {
    return this.chart.getSnapshot().context.proofs;
  }

  /** Whether the lock is set anew, well or badly; a key may still be in. */
  get isSet(): boolean {
    return this.chart.getSnapshot().context.hasChanged && this.setCombination !== null;
  }

  get isDoorShut(): boolean {
    return this.state === "doorShut";
  }

  /**
   * Turns the dial.
   *
   * @param by - graduations, left positive, one direction; what key or stop do not let through is lost
   * @param now_ms - time, or undefined where the motion has no times
   * @throws {LockError} `too-far`
   */
  turnBy(by: Graduations, now_ms?: Milliseconds): readonly ChangeEvent[] {
    const before = this.hand;
    const dialing = this.proof === null ? this.move(by, now_ms) : this.tryBy(this.proof, by, now_ms);
    return [...dialing, ...this.begunAnew(before), ...this.toldNow()];
  }

  /** Does something with key, button or door. What this lock does not have does nothing. */
  act(act: ChangeAct): ActAnswer {
    const before = this.hand;
    const refusal = this.does(act);
    return { facts: [...this.begunAnew(before), ...this.toldNow()], refusal };
  }

  /** Turns the dial before there is anything to try. @returns what the hand dialed */
  protected abstract move(by: Graduations, now_ms: Milliseconds | undefined): readonly DialingFact[];

  /** Does something and says what came of it. @returns why it does nothing, or null */
  protected abstract does(act: ChangeAct): ActRefusal | null;

  /** Tells the chart what happened; whatever is asked of it from then on knows. */
  protected say(fact: ChangeFact): void {
    this.chart.send(fact);
    this.news.push(fact);
  }

  private tryBy(proof: Proof, by: Graduations, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    const { facts, ended } = proof.turnBy(by, now_ms);
    if (ended !== null) this.say({ type: `proof.${ended}` });
    return facts;
  }

  /** Where the hand is read anew, the dialing begins anew. */
  private begunAnew(before: HandledLock): readonly DialingEvent[] {
    const { hand } = this;
    return hand === before ? [] : [{ type: "attempt.restarted" }, ...(hand.begunWith ?? [])];
  }

  private toldNow(): readonly ChangeFact[] {
    const { news } = this;
    this.news = [];
    return news;
  }
}
