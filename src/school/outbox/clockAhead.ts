/** Below this nobody is told, ms: a slow network alone makes seconds of it. */
const TOLD_FROM_MS = 2 * 60_000;

/**
 * How far a bench's clock is ahead of the server's, ms; 0 where that is too little to tell.
 *
 * @param asked - the bench's clock when it asked, milliseconds since 1970
 * @param answered - when the answer came
 * @param server - the server's clock between the two
 */
export function clockAhead_ms(asked: number, answered: number, server: number): number {
  const ahead = Math.round((asked + answered) / 2 - server);
  return Math.abs(ahead) < TOLD_FROM_MS ? 0 : ahead;
}
