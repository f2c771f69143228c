/** Lets go of what a page holds. */
type Release = () => void;

const NAME = "gatefall-dial";

/**
 * Takes the dial for this page, so that two pages are not turned by one device.
 *
 * @returns null where another page has it. A browser without such locks lets every page have it
 */
export function holdForPage(): Promise<Release | null> {
  const { locks } = navigator;
  if (locks === undefined) return Promise.resolve(() => undefined);
  return new Promise((resolve, reject) => {
    const take = (lock: Lock | null): Promise<void> => {
      if (lock === null) resolve(null);
      // The lock is held for as long as this is not settled.
      return lock === null ? Promise.resolve() : new Promise((release) => resolve(release));
    };
    locks.request(NAME, { ifAvailable: true }, take).catch(reject);
  });
}
