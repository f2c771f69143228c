/** Lets go of what a page holds. @returns once another may have it */
type Release = () => Promise<void>;

const NAME = "gatefall-dial";

/**
 * Takes the dial for this page, so that two pages are not turned by one device.
 *
 * @returns null where another page has it. A browser without such locks, or that refuses them as it refuses to store, lets every
 *   page have it
 */
function holdForPage(): Promise<Release | null> {
  const { locks } = navigator;
  if (locks === undefined) return Promise.resolve(FREE);
  return new Promise((resolve) => {
    const take = (lock: Lock | null): Promise<void> => {
      if (lock === null) {
        resolve(null);
        return Promise.resolve();
      }
      // The lock is held for as long as this is not settled.
      return new Promise((letGo) => {
        resolve(() => {
          letGo();
          return held;
        });
      });
    };
    const held = locks.request(NAME, { ifAvailable: true }, take).then(
      () => undefined,
      () => resolve(FREE),
    );
  });
}

const FREE: Release = () => Promise.resolve();

/** This page's hold of the dial, from one connection to the next. Mutable. */
export class PageHold {
  private release: Release | null = null;
  /** When what was asked for or held before is gone: until then it would be in the way. */
  private before: Promise<unknown> = Promise.resolve();

  /**
   * Takes the dial for a connection.
   *
   * @param isWanted - whether there still is that connection: another may have been chosen meanwhile
   * @returns whether it has it now; false where another page has it, or it is not wanted any more
   */
  take(isWanted: () => boolean): Promise<boolean> {
    const taken = this.before.then(() => isWanted() && this.ask(isWanted));
    this.before = taken;
    return taken;
  }

  letGo(): void {
    const released = this.release?.();
    this.release = null;
    this.before = this.before.then(() => released);
  }

  private async ask(isWanted: () => boolean): Promise<boolean> {
    const release = await holdForPage();
    if (isWanted()) this.release = release;
    else await release?.();
    return this.release !== null;
  }
}
