import type { BoardRow } from "./boardRows";
import { whoWords } from "./boardWords";

/** Least time between two things that are said, ms: whoever listens must be able to go on reading. */
const PAUSE_MS = 5000;

const andList = new Intl.ListFormat("en-US", { type: "conjunction" });

const said = (who: readonly string[], one: string, many: string) =>
  who.length === 0 ? "" : `${andList.format(who)} ${who.length === 1 ? one : many}.`;

/** What is said aloud of a board: who has come to need help, or is gone; gathered, and not too often. Mutable. */
export class BoardNews {
  private before: ReadonlyMap<string, BoardRow["standing"]> | null = null;
  private next_ms = 0;

  /**
   * What is to be said now; null for nothing new, or not yet.
   *
   * @param now - milliseconds since 1970
   */
  next(rows: readonly BoardRow[], now: number): string | null {
    const after = new Map(rows.map(({ bench, standing }) => [bench.deviceId, standing]));
    const { before } = this;
    // What is there as one comes is read, not said.
    if (before === null) {
      this.before = after;
      return null;
    }
    if (now < this.next_ms) return null;
    this.before = after;
    const became = (standing: BoardRow["standing"]) =>
      rows
        .filter(({ bench, standing: is }) => is === standing && before.get(bench.deviceId) !== standing)
        .map((row) => whoWords(row));
    const words = [said(became("help"), "needs help", "need help"), said(became("gone"), "is offline", "are offline")];
    const text = words.filter((one) => one !== "").join(" ");
    if (text === "") return null;
    this.next_ms = now + PAUSE_MS;
    return text;
  }
}
