import type { ZeroingTry as ZeroingResult } from "../../../drill/marking/tryResult";
import type { ZeroingStation } from "../../../drill/sheet/sheet";
import { stationRules } from "../../../drill/sheet/stationRules";
import type { Graduations, Milliseconds, Turn } from "../../../lock/dial";
import type { DialDoubt } from "../../../realdial/sources/dialDoubt";
import type { SourceDescription } from "../../../realdial/sources/sourceDescription";
import type { TakenReading } from "../../../zeroing/readAgain";
import { type SideResult, sideResult } from "../../../zeroing/zeroResult";
import { ZeroingSession } from "../../exercises/zeroing/session/zeroingSession";
import { Store } from "../../parts/page/store";
import { stationRanges, type TrySetup } from "./trySetup";

/**
 * One try at setting zero in a sitting. The ring is clamped where the sheet has put it: what is marked is the hand.
 *
 * A store outside React; it asks nobody for time or chance.
 */
export class ZeroingTry extends Store {
  readonly kind = "zeroing";
  readonly setup: TrySetup;
  readonly session: ZeroingSession;
  readonly readings: TakenReading[] = [];
  isBegun = false;
  private isGivenUp = false;
  private time_ms: Milliseconds = 0;

  constructor(setup: TrySetup) {
    super();
    this.setup = setup;
    const rules = stationRules(setup.station as ZeroingStation, setup.profile);
    const { graduations } = setup.profile;
    this.session = new ZeroingSession(
      { graduations, rules, ranges: stationRanges(setup), creep: [0, 0], weight: setup.conditions.dial },
      setup.chance,
    );
    this.session.clampRing();
  }

  /** Whether both directions are done, or the candidate has said that it is. */
  get isEnded(): boolean {
    return this.isGivenUp || this.session.asked === null;
  }

  /** How far the hand is ahead of a heavy dial, graduations. */
  get windUp(): Graduations {
    return this.session.windUp;
  }

  /** Whether a light dial moves by itself. */
  get isRunningOn(): boolean {
    return this.session.isRunningOn && !this.isEnded;
  }

  noteSource(source?: SourceDescription): boolean {
    return this.session.noteSource(source);
  }

  noteDoubt(why: DialDoubt): boolean {
    return this.session.noteDoubt(why);
  }

  /** The hand turns. @param by - graduations, left positive, one direction */
  turnBy(by: Graduations, now: Milliseconds): void {
    if (by !== 0) this.work(now, () => this.session.turnBy(by, now));
  }

  /** Lets time pass over a light dial that runs on. */
  runOn(now: Milliseconds): void {
    if (this.isRunningOn) this.work(now, () => this.session.runOn(now));
  }

  takeReading(now: Milliseconds): void {
    this.runOn(now);
    this.work(now, () => {
      this.session.takeReading(now);
      const { last } = this.session.memory;
      if (last !== null) this.readings.push({ turn: last.side, deviation: last.deviation, refusal: last.refusal });
    });
  }

  /** The candidate says that the try is done. */
  end(): void {
    this.isGivenUp = true;
    this.changed();
  }

  /** What it came to. */
  result(): ZeroingResult {
    const { station, repetition } = this.setup.plan;
    const { refused } = this.session.memory;
    const sides = { left: this.side("left"), right: this.side("right") };
    return {
      kind: "zeroing",
      station,
      repetition,
      verdicts: { left: sides.left?.verdict ?? null, right: sides.right?.verdict ?? null },
      means: { left: sides.left?.mean ?? null, right: sides.right?.mean ?? null },
      refused: refused.left + refused.right,
      readings: [...this.readings],
      time_ms: this.time_ms,
      isBrokenOff: false,
      ...this.session.turnedBy.forRecord,
      ...(this.setup.begunAgain > 0 && { begunAgain: this.setup.begunAgain }),
    };
  }

  private work(now: Milliseconds, act: () => void): void {
    if (this.isEnded) return;
    this.isBegun = true;
    act();
    this.time_ms = this.session.effort(now).time_ms;
    this.changed();
  }

  /** A direction whose series is closed, judged; null for another. */
  private side(turn: Turn): SideResult | null {
    const { memory, setup, asked } = this.session;
    const accepted = memory.accepted[turn];
    const isClosed = accepted.length >= Math.max(2, memory.wanted[turn]) && asked !== turn;
    return isClosed
      ? sideResult(
          accepted.map(({ deviation }) => deviation),
          setup.rules,
        )
      : null;
  }
}
