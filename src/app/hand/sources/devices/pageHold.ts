/** Lets go of what a page holds. @returns once another may have it */
export type Release = () => Promise<void>;

const NAME = "gatefall-dial";

/**
 * Takes the dial for this page, so that two pages are not turned by one device.
 *
 * @returns null where another page has it. A browser without such locks lets every page have it
 */
export function holdForPage(): Promise<Release | null> {
  const { locks } = navigator;
  if (locks === undefined) return Promise.resolve(() => Promise.resolve());
  return new Promise((resolve, reject) => {
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
    const held = locks.request(NAME, { ifAvailable: true }, take).then(() => undefined);
    held.catch(reject);
  });
}
