/** Remarks that are listed; the rest is counted. */
const MOST_LISTED = 200;

/** What was repaired or left out on the way, in sentences. */
export class Remarks {
  private readonly listed: string[] = [];
  private count = 0;

  add(sentence: string): void {
    this.count += 1;
    if (this.listed.length < MOST_LISTED) this.listed.push(sentence);
  }

  /** Every remark, or the first ones and how many more there are. */
  get sentences(): readonly string[] {
    const more = this.count - this.listed.length;
    return more === 0 ? this.listed : [...this.listed, `And ${more} more.`];
  }
}
