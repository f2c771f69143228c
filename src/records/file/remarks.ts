import type { Problem } from "../../wording/problem";
import { fileProblem } from "../fileWords";

/** Remarks that are listed; the rest is counted. */
const MOST_LISTED = 200;

/** What was repaired or left out on the way. */
export class Remarks {
  private readonly listed: Problem[] = [];
  private count = 0;

  add(problem: Problem): void {
    this.count += 1;
    if (this.listed.length < MOST_LISTED) this.listed.push(problem);
  }

  /** Every remark, or the first ones and how many more there are. */
  get all(): readonly Problem[] {
    const more = this.count - this.listed.length;
    return more === 0 ? this.listed : [...this.listed, fileProblem("more-remarks", [], { count: more })];
  }
}
