import { statfs } from "node:fs/promises";

/**
 * Room that must be left on the disk of the embedded database, bytes: three pieces of its log (16 MiB each). One that finds no room
 * for its log never answers again.
 */
const LEAST_BYTES = 48 * 2 ** 20;

/** How long an answer holds, ms. */
const HOLDS_MS = 200;

/**
 * Looks whether there is room to write in a folder. Where that cannot be found out, there is.
 *
 * @param freeBytes - of the disk of a folder; tests hand in their own
 */
export function roomLeft(
  folder: string,
  freeBytes = async (of: string) => {
    const { bavail, bsize } = await statfs(of);
    return bavail * bsize;
  },
): () => Promise<boolean> {
  let askedAt = Number.NEGATIVE_INFINITY;
  let answer = Promise.resolve(true);
  return () => {
    const now = performance.now();
    if (now - askedAt > HOLDS_MS) {
      askedAt = now;
      answer = freeBytes(folder).then(
        (free) => free >= LEAST_BYTES,
        () => true,
      );
    }
    return answer;
  };
}
