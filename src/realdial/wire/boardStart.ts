import type { Milliseconds } from "../../lock/dial";
import { BoardClock } from "./boardClock";
import type { HandLimit } from "./handLimit";
import type { WireEvent } from "./wireEvent";
import type { Hello, WireLine } from "./wireLine";

/** So long without a line, a hand may have turned to and fro unseen: the time by which a hand rests. */
const GAP_FROM: Milliseconds = 150;

/** How far a counter of so many bits has gone on, the short way round. */
const since = (now: number, before: number, bits: 16 | 32): number => ((now - before) << (32 - bits)) >> (32 - bits);

/** A board from one start to the next: its steps, added up from its hello. Mutable. */
export class BoardStart {
  readonly countsPerTurn: number;
  private readonly before: number;
  private readonly clock = new BoardClock();
  private readonly limit: HandLimit;
  private last: WireLine;
  private steps = 0;
  private time: Milliseconds = 0;
  /** Lines lost so far. */
  lost = 0;

  /** @param turns - where the encoder is taken to be at this hello @param limit - knows what a hand may turn */
  constructor(hello: Hello, turns: number, limit: HandLimit) {
    this.limit = limit;
    this.last = hello;
    this.before = turns;
    this.countsPerTurn = hello.countsPerTurn;
  }

  /** Turns of the encoder, unwrapped. */
  get turns(): number {
    return this.before + this.steps / this.countsPerTurn;
  }

  /** Whether a line was sent since the same start of the board. */
  isOf({ start }: WireLine): boolean {
    return start === this.last.start;
  }

  /** Whether a line was sent after the last one; both of the same start. */
  isNext({ seq, ms }: WireLine): boolean {
    const later = since(ms, this.last.ms, 32);
    return later > 0 || (later === 0 && since(seq, this.last.seq, 16) > 0);
  }

  /** Takes the next line. @returns what came of it */
  take(line: WireLine, at: Milliseconds): WireEvent[] {
    const { last } = this;
    const counted = since(line.count, last.count, 32);
    const lasted = since(line.ms, last.ms, 32);
    const isLost = since(line.seq, last.seq, 16) !== 1;
    this.lost += Math.max(0, since(line.seq, last.seq, 16) - 1);
    this.last = line;
    const isTurned = this.limit.allows(counted, this.countsPerTurn, lasted, at);
    const by = isTurned ? counted : 0;
    this.steps += by;
    this.time += lasted;
    const when = this.clock.timeOf(this.time, at);
    const missed = line.missed - last.missed;
    const events: WireEvent[] = [];
    if (missed > 0) events.push({ type: "missed", steps: missed, at: when });
    if (!isTurned) events.push({ type: "leapt", steps: Math.abs(counted), at: when });
    if (by !== 0 && isLost && lasted > GAP_FROM) events.push({ type: "gap", lasted, at: when });
    if (by !== 0) events.push({ type: "moved", turns: this.turns, at: when });
    if (line.type === "button") events.push({ type: "pressed", turns: this.turns, at: when });
    return events;
  }
}
