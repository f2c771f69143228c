import type { NumberField } from "./numberField";
import { BROKEN } from "./numberMemory";

/**
 * The sequences of numbers that keep to the rules where a number may come twice: only the memory joins one number to
 * the next, so a table over places and states counts them.
 */
export class FreeSequences {
  /** How many sequences there are. */
  readonly count: number;
  private readonly field: NumberField;
  /** Ways to complete a sequence, by place and state. */
  private readonly ways: readonly Float64Array[];

  constructor(field: NumberField) {
    this.field = field;
    const ways = Array.from({ length: field.wheels }, () => new Float64Array(field.memory.states));
    this.ways = ways;
    for (let place = field.wheels - 1; place >= 0; place--) {
      for (let state = 0; state < field.memory.states; state++) {
        const row = ways[place];
        if (row !== undefined)
          row[state] = this.marks(place).reduce((sum, mark) => sum + this.taken(place, state, mark), 0);
      }
    }
    this.count = ways[0]?.[0] ?? 0;
  }

  /**
   * The sequence at a place of the list of all.
   *
   * @param rank - an integer in [0, count)
   */
  at(rank: number): number[] {
    let rest = rank;
    let state = 0;
    return Array.from({ length: this.field.wheels }, (_, place) => {
      const mark = this.marks(place).find((one) => {
        const ways = this.taken(place, state, one);
        if (rest < ways) return true;
        rest -= ways;
        return false;
      });
      state = this.field.memory.next(state, mark ?? 0);
      return mark ?? 0;
    });
  }

  private marks(place: number): number[] {
    const { wheels, isAllowed, isAllowedLast } = this.field;
    return (place === wheels - 1 ? isAllowedLast : isAllowed).flatMap((is, mark) => (is ? [mark] : []));
  }

  private taken(place: number, state: number, mark: number): number {
    const next = this.field.memory.next(state, mark);
    if (next === BROKEN) return 0;
    if (next === this.field.memory.accepted) return place === this.field.wheels - 1 ? 1 : 0;
    return this.ways[place + 1]?.[next] ?? 0;
  }
}
