import { createActor } from "xstate";
import { HandSession } from "../../../../dialing/hand/handSession";
import { type Graduations, turnOf } from "../../../../lock/dial";
import type { Chance } from "../../../../statistics/chance";
import { markPlay } from "../../../../zeroing/playEstimate";
import { hasStopsEnough, type PlayEvent, playMachine, stopProblem } from "../../../../zeroing/playMachine";
import { ZeroLock } from "../../../../zeroing/zeroLock";
import { HandStore } from "../../../hand/handStore";
import type { ZeroingSetup } from "./zeroingSession";

/** Largest play that anyone may answer, graduations. */
export const MOST_PLAY: Graduations = 5;

/** What the exercise is set up for. */
export type PlaySetup = Pick<ZeroingSetup, "ranges" | "graduations" | "weight">;

/** "Find the play": a lock whose lost motion is to be found by stopping on the cam's mark from each side. */
export class PlaySession extends HandStore {
  lock: ZeroLock;
  protected readonly hand: HandSession<PlayEvent>;
  readonly chart = createActor(playMachine).start();
  private readonly newCondition: () => ZeroLock;

  constructor(setup: PlaySetup, chance: Chance) {
    super();
    this.newCondition = () => ZeroLock.drawn(setup, chance);
    this.lock = this.newCondition();
    const lock = () => this.lock;
    this.hand = new HandSession<PlayEvent>(
      {
        get dial() {
          return lock().dial;
        },
        turnBy: (by) => {
          lock().turnBy(by);
          return by === 0 ? [] : [{ type: "dial.turned", turn: turnOf(by) }];
        },
      },
      { weight: setup.weight, chart: this.chart },
    );
  }

  /** Whether the dial stands where a stop is good. */
  get isAtStop(): boolean {
    const { turn } = this.chart.getSnapshot().context;
    return turn !== null && stopProblem(this.lock, turn) === null;
  }

  /** Keeps where the dial stands, under the direction it was last turned in, if it is a stop. */
  keepStop(): void {
    const { turn } = this.chart.getSnapshot().context;
    if (turn === null) return;
    const problem = this.isRunningOn ? "still-moving" : stopProblem(this.lock, turn);
    this.chart.send({ type: "stop.asked", seen: this.lock.seen, problem });
    this.changed();
  }

  /** Marks the trainee's own number. @param answer - graduations */
  answer(answer: Graduations): void {
    const { lock, chart } = this;
    const { context } = chart.getSnapshot();
    if (!hasStopsEnough(context)) return;
    const mark = markPlay(context.stops, lock.perTurn, answer, lock.condition.lostMotion);
    this.chart.send({ type: "answer.marked", mark });
    this.changed();
  }

  /** The same lock, from no stops at all. */
  again(): void {
    this.chart.send({ type: "stops.restarted" });
    this.changed();
  }

  /** Another lock. */
  newLock(): void {
    this.lock = this.newCondition();
    this.again();
  }
}
