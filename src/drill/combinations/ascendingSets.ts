import type { NumberField } from "./numberField";
import { BROKEN } from "./numberMemory";

/** Which number of a set is named as the one to be dialed last. */
export type Named = "any" | "highest" | "lowest";

/** A set of numbers, with the one that is dialed last. */
export interface NamedSet {
  /** All but the last one, ascending. */
  readonly others: readonly number[];
  readonly last: number;
}

/** Whether a last number has been named already, as an index. */
type IsNamed = 0 | 1;

/** Ways to complete a set, by the lowest number that may come next, the memory's state, and whether one is named. */
interface Ways {
  /** Highest number that may be taken. */
  readonly bound: number;
  readonly table: Float64Array;
}

/**
 * The sets of different numbers that keep to the rules, each once for every number that may be named as its last.
 *
 * Dynamic programming along the dial: numbers are taken in ascending order, so that neighbors alone decide about
 * separation. Round the dial the highest and the lowest are neighbors too: the lowest is chosen first, and sets the
 * bound of the highest. There are as many different bounds as the separation is wide, so the work grows with
 * separation x graduations x states of the memory. All counts are below 200^6 and exact in a double.
 */
export class AscendingSets {
  /** How many sets there are, counted once for each number that may be named. */
  readonly count: number;
  private readonly field: NumberField;
  private readonly named: Named;
  private readonly gap: number;
  private readonly width: number;
  private readonly weights: readonly number[];
  private ways: Ways | undefined;

  constructor(field: NumberField, named: Named) {
    this.field = field;
    this.named = named;
    this.gap = Math.max(1, field.separation);
    this.width = 2 * field.memory.states;
    this.weights = field.isAllowed.map((is, lowest) =>
      is ? this.taken(this.waysUpTo(this.boundFor(lowest)), lowest, 0, 0) : 0,
    );
    this.count = this.weights.reduce((sum, weight) => sum + weight, 0);
  }

  /**
   * The set at a place of the list of all.
   *
   * @param rank - an integer in [0, count)
   */
  at(rank: number): NamedSet {
    let rest = rank;
    const lowest = this.weights.findIndex((weight) => {
      if (rest < weight) return true;
      rest -= weight;
      return false;
    });
    return this.completed(this.waysUpTo(this.boundFor(lowest)), lowest, rest);
  }

  private boundFor(lowest: number): number {
    const { perTurn, separation, isCircular } = this.field;
    return isCircular ? Math.min(perTurn - 1, lowest + perTurn - separation) : perTurn - 1;
  }

  /** The table for a bound; the last one is kept, since neighbors on the dial mostly share it. */
  private waysUpTo(bound: number): Ways {
    if (this.ways?.bound !== bound) this.ways = this.fill(bound);
    return this.ways;
  }

  private fill(bound: number): Ways {
    const { width, field } = this;
    const ways: Ways = { bound, table: new Float64Array(width * (bound + 2)) };
    for (let mark = bound; mark >= 0; mark--) {
      ways.table.copyWithin(mark * width, (mark + 1) * width, (mark + 2) * width);
      if (field.isAllowed[mark] === true) this.addTaken(ways, mark);
    }
    return ways;
  }

  /** Adds to the row of a mark the ways that take it; unrolled, since nearly all the time goes by here. */
  private addTaken(ways: Ways, mark: number): void {
    const { memory, isAllowedLast } = this.field;
    const { table } = ways;
    const isLast = isAllowedLast[mark] === true;
    for (let state = 0; state < memory.states; state++) {
      const next = memory.next(state, mark);
      if (next === BROKEN) continue;
      const plain = this.from(ways, mark + this.gap, next, 0);
      const named = this.from(ways, mark + this.gap, next, 1);
      const at = mark * this.width + 2 * state;
      table[at] = (table[at] as number) + plain + (isLast && this.isNamedHere(state, next) ? named : 0);
      table[at + 1] = (table[at + 1] as number) + named;
    }
  }

  /** Ways to complete a set from numbers at or above a mark. */
  private from({ bound, table }: Ways, mark: number, state: number, isNamed: IsNamed): number {
    if (state === this.field.memory.accepted) return isNamed;
    return mark > bound ? 0 : (table[mark * this.width + 2 * state + isNamed] ?? 0);
  }

  /** Ways that take this mark next, named as the last or not. */
  private taken(ways: Ways, mark: number, state: number, isNamed: IsNamed): number {
    const next = this.field.memory.next(state, mark);
    if (next === BROKEN) return 0;
    const plain = this.from(ways, mark + this.gap, next, isNamed);
    const isNameable = isNamed === 0 && this.field.isAllowedLast[mark] === true && this.isNamedHere(state, next);
    return isNameable ? plain + this.from(ways, mark + this.gap, next, 1) : plain;
  }

  private isNamedHere(state: number, next: number): boolean {
    if (this.named === "any") return true;
    return this.named === "lowest" ? state === 0 : next === this.field.memory.accepted;
  }

  /** Walks the table upward; each number is left out, taken, or taken as the last, as the rank falls. */
  private completed(ways: Ways, lowest: number, rank: number): NamedSet {
    const { memory } = this.field;
    const others: number[] = [];
    let last = -1;
    let state = 0;
    let rest = rank;
    let mark = lowest;
    while (state !== memory.accepted) {
      const isNamed = last >= 0 ? 1 : 0;
      const next = memory.next(state, mark);
      const all = this.field.isAllowed[mark] === true ? this.taken(ways, mark, state, isNamed) : 0;
      if (rest >= all) {
        rest -= all;
        mark += 1;
        continue;
      }
      const plain = this.from(ways, mark + this.gap, next, isNamed);
      if (rest < plain) others.push(mark);
      else {
        rest -= plain;
        last = mark;
      }
      state = next;
      mark += this.gap;
    }
    return { others, last };
  }
}
