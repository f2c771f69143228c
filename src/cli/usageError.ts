/** A command line that cannot be carried out; its message is a sentence for standard error, exit status 2. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}
