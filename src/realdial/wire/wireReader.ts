import type { Milliseconds } from "../../lock/dial";
import { BoardStart } from "./boardStart";
import { HandLimit } from "./handLimit";
import { LineSplitter } from "./lineSplitter";
import type { WireEvent, WireTally } from "./wireEvent";
import { type Hello, readWireLine, WIRE_VERSION, type WireLine } from "./wireLine";

/** A board that starts takes up to two seconds to speak, as its loader waits for a program. */
const HELLO_WITHIN: Milliseconds = 4000;
/** At rest a board speaks every 250 ms. */
const SILENT_AFTER: Milliseconds = 1500;
/** So many lines from before the last one: the board has started anew under the same number. */
const STALE_IN_A_ROW = 5;

/**
 * Follows an encoder board by the bytes it sends, whatever they are.
 *
 * Until its hello nothing counts. A line counts by itself: one that is damaged, lost or comes twice costs nothing. Every
 * start of the board has a number, so steps of two starts are never taken for one. Mutable.
 */
export class WireReader {
  private readonly lines = new LineSplitter();
  private readonly began: Milliseconds;
  private readonly limit: HandLimit;
  /** The board since its last hello; null until it is greeted. */
  private board: BoardStart | null = null;
  /** Turns when the board was last known. */
  private turns: number | null = null;
  private heard: Milliseconds | null = null;
  private staleInARow = 0;
  private tallied = { read: 0, bad: 0, stale: 0, lost: 0 };

  /** @param at - when it begins to listen, by the clock that `take` is given the time of */
  constructor(at: Milliseconds) {
    this.began = at;
    this.limit = new HandLimit(at);
  }

  /** What has come of the lines so far. */
  get tally(): WireTally {
    return { ...this.tallied, lost: this.tallied.lost + (this.board?.lost ?? 0) };
  }

  /** Whether the board is to be asked for its hello. */
  get wantsHello(): boolean {
    return this.board === null;
  }

  /** What its silence comes to: no sound line ever, none any more; or null while it speaks. */
  silence(at: Milliseconds): "no-hello" | "silent" | null {
    if (this.heard === null) return at - this.began > HELLO_WITHIN ? "no-hello" : null;
    return at - this.heard > SILENT_AFTER ? "silent" : null;
  }

  /**
   * @param at - when the bytes arrived
   * @returns what came of them, in order
   */
  take(bytes: Uint8Array, at: Milliseconds): readonly WireEvent[] {
    return this.lines.take(bytes).flatMap((text) => {
      const line = text === null ? null : readWireLine(text);
      if (line === null) this.tallied.bad += 1;
      return line === null ? [] : this.hear(line, at);
    });
  }

  private hear(line: WireLine, at: Milliseconds): WireEvent[] {
    this.tallied.read += 1;
    this.heard = at;
    if (line.type === "hello" && line.version > WIRE_VERSION) {
      this.forgetBoard();
      return [{ type: "newer", version: line.version }];
    }
    const { board } = this;
    if (board === null) return line.type === "hello" ? this.greet(line, at) : [];
    if (board.isOf(line) && board.isNext(line)) {
      this.staleInARow = 0;
      return board.take(line, at);
    }
    return board.isOf(line) && !this.isStaleTooOften() ? [] : this.restart(line, at);
  }

  private greet(hello: Hello, at: Milliseconds): WireEvent[] {
    this.board = new BoardStart(hello, this.turns ?? 0, this.limit);
    return [{ type: "ready", countsPerTurn: hello.countsPerTurn, at }];
  }

  private restart(line: WireLine, at: Milliseconds): WireEvent[] {
    this.forgetBoard();
    return [{ type: "restarted", at }, ...(line.type === "hello" ? this.greet(line, at) : [])];
  }

  private isStaleTooOften(): boolean {
    this.tallied.stale += 1;
    this.staleInARow += 1;
    return this.staleInARow >= STALE_IN_A_ROW;
  }

  private forgetBoard(): void {
    this.turns = this.board?.turns ?? this.turns;
    this.tallied.lost += this.board?.lost ?? 0;
    this.staleInARow = 0;
    this.board = null;
  }
}
