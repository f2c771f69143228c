/** Exit status where something went wrong inside, and not with the command line or the input. */
export const INTERNAL_ERROR = 3;

/** An error that is no one's mistake but the program's, in words. */
export function internalWords(error: unknown): string {
  const what = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return `something went wrong inside the program (${what.slice(0, 200)})`;
}
