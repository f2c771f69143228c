import { createActor } from "xstate";
import { Attempt } from "../../src/dialing/attempt";
import type { AttemptStart } from "../../src/dialing/attemptStart";
import { type DialingEvent, dialingMachine } from "../../src/dialing/dialingMachine";
import type { Combination } from "../../src/lock/combination";
import type { Graduations, Milliseconds } from "../../src/lock/dial";
import type { Profile } from "../../src/lock/profile";
import { type ChartState, planMotion, restBefore } from "./handPlanner";

/** A planned hand takes so long for one move, whatever its length. */
const MOVE: Milliseconds = 100;

/** An arrow of the chart, as text: where from, number and how the one before was left, and by what. */
export function arrowText({ value, context }: ChartState, event: DialingEvent): string {
  return `${value} ${context.number + 1} ${context.leftAt ?? "-"} by ${event.type}`;
}

/** A lock under a planned hand, with a chart that hears only what the engine reports. */
export class ChartBench {
  /** Arrows that the chart took, each as text. */
  readonly arrows: string[] = [];
  attempt: Attempt;
  private readonly profile: Profile;
  private readonly combination: Combination;
  private readonly start: AttemptStart;
  private readonly chart;
  private now_ms: Milliseconds = 0;

  constructor(profile: Profile, combination: Combination, start: AttemptStart = { dial: 0 }) {
    this.profile = profile;
    this.combination = combination;
    this.start = start;
    this.attempt = new Attempt(profile, combination, start);
    this.chart = createActor(dialingMachine(profile)).start();
  }

  get state(): ChartState {
    const { value, context } = this.chart.getSnapshot();
    return { value, context };
  }

  /** Makes an event happen: by a motion of the hand, or by a new attempt where no motion can. */
  make(event: DialingEvent): void {
    if (event.type === "attempt.restarted") {
      this.attempt = new Attempt(this.profile, this.combination, this.start);
      this.hear(event);
      return;
    }
    if (event.type === "fresh.started" && !this.canStartAfresh()) {
      this.takeAfresh(event);
      return;
    }
    this.now_ms += restBefore(this.profile, event);
    for (const by of planMotion(this.attempt, this.state, event)) this.turn(by);
  }

  /** Under a later number an encoder lock takes a long first turn for going round again. */
  private canStartAfresh(): boolean {
    const { value, context } = this.state;
    const isDialing = value === "turning" || value === "resting" || value === "overrun" || value === "drawing";
    return this.profile.kind === "wheel-pack" || !isDialing || context.number === 0;
  }

  /** Tells the chart alone of a fresh start that no motion makes, with a hand that is on its first turn. */
  private takeAfresh(event: DialingEvent): void {
    this.attempt = new Attempt(this.profile, this.combination, this.start);
    this.attempt.turnBy(this.profile.procedure[0]?.turn === "right" ? -5 : 5, this.now_ms);
    this.chart.send(event);
  }

  /** Turns the dial, and lets the chart hear what came of it. */
  turn(by: Graduations): void {
    this.now_ms += MOVE;
    for (const fact of this.attempt.turnBy(by, this.now_ms)) this.hear(fact);
  }

  private hear(event: DialingEvent): void {
    if (this.chart.getSnapshot().can(event)) this.arrows.push(arrowText(this.state, event));
    this.chart.send(event);
  }
}
