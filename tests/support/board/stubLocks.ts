/** A stub of the locks that pages of one browser share: one lock, free or held. */
export class StubLocks {
  /** How many pages hold it. */
  held = 0;

  async request(_name: string, _options: unknown, take: (lock: object | null) => Promise<void>): Promise<void> {
    if (this.held > 0) return take(null);
    this.held += 1;
    await take({});
    this.held -= 1;
  }
}
