import type { Graduations } from "../../lock/dial";
import type { CombinationRules } from "../../lock/profile";
import { thirdOf } from "./combinationRules";

/** No combination goes on from here: a rule is broken. */
export const BROKEN = -1;

/** What the rules must remember of the numbers taken so far. */
interface Memory {
  readonly taken: number;
  /** Last digits taken, as bits; only where differences may not be multiples of ten. */
  readonly digits: number;
  /** What has been met of what is asked: an odd number, an even one, each third of the dial; as bits. */
  readonly met: number;
}

/** What one number adds to the memory. */
type Kind = Pick<Memory, "digits" | "met">;

const ODD = 1;
const EVEN = 2;
const FIRST_THIRD = 4;
const ALL_THIRDS = 7 * FIRST_THIRD;

const keyOf = ({ taken, digits, met }: Memory) => (digits * 32 + met) * 8 + taken;

/**
 * The rules as a machine that takes one number after another, in any order, and forgets all it need not know.
 *
 * Two numbers lie a plain multiple of ten apart exactly where their last digits are the same, so ten bits remember every
 * difference. States are whole numbers; separation, order and excluded numbers are the business of whoever feeds it.
 */
export class NumberMemory {
  /** How many states there are but the accepted one. */
  readonly states: number;
  /** The state of a whole combination that keeps to the rules. */
  readonly accepted: number;
  private readonly kinds: Kind[] = [];
  private readonly kindOf: readonly number[];
  private readonly table: Int32Array;
  private readonly asked: number;
  private readonly wheels: number;

  /**
   * @param perTurn - graduations in one turn of the dial
   * @param wheels - numbers of a combination
   */
  constructor(rules: CombinationRules, perTurn: number, wheels: number) {
    this.wheels = wheels;
    this.asked =
      (rules.notAllEven === true ? ODD : 0) |
      (rules.notAllOdd === true ? EVEN : 0) |
      (rules.oneFromEachThird === true ? ALL_THIRDS : 0);
    const isByDigit = rules.multiplesOfTen === "differences";
    this.kindOf = Array.from({ length: perTurn }, (_, mark) => this.kindIndex(mark, perTurn, isByDigit));
    const rows = this.walk();
    this.states = rows.length;
    this.accepted = rows.length;
    this.table = Int32Array.from(rows.flat(), (next) => (next === Infinity ? this.accepted : next));
  }

  /**
   * The state after one more number.
   *
   * @param mark - the number, an integer in [0, one turn)
   * @returns a state, `accepted`, or `BROKEN`
   */
  next(state: number, mark: Graduations): number {
    return this.table[state * this.kinds.length + (this.kindOf[mark] ?? 0)] ?? BROKEN;
  }

  private kindIndex(mark: number, perTurn: number, isByDigit: boolean): number {
    const met = ((mark % 2 === 1 ? ODD : EVEN) | (FIRST_THIRD << thirdOf(mark, perTurn))) & this.asked;
    const digits = isByDigit ? 1 << (mark % 10) : 0;
    const known = this.kinds.findIndex((kind) => kind.met === met && kind.digits === digits);
    return known >= 0 ? known : this.kinds.push({ met, digits }) - 1;
  }

  /** Every state that can be reached, with the state after each kind of number; Infinity stands for the accepted one. */
  private walk(): number[][] {
    const start: Memory = { taken: 0, digits: 0, met: 0 };
    const found = [start];
    const indices = new Map([[keyOf(start), 0]]);
    const indexOf = (memory: Memory): number => {
      const known = indices.get(keyOf(memory));
      if (known !== undefined) return known;
      indices.set(keyOf(memory), found.length);
      return found.push(memory) - 1;
    };
    const after = (next: Memory | undefined): number => {
      if (next === undefined) return BROKEN;
      if (next.taken < this.wheels) return indexOf(next);
      return next.met === this.asked ? Infinity : BROKEN;
    };
    const rows: number[][] = [];
    // The list grows while it is walked.
    for (const memory of found) rows.push(this.kinds.map((kind) => after(this.added(memory, kind))));
    return rows;
  }

  private added({ taken, digits, met }: Memory, kind: Kind): Memory | undefined {
    if ((digits & kind.digits) !== 0) return undefined;
    return { taken: taken + 1, digits: digits | kind.digits, met: met | kind.met };
  }
}
