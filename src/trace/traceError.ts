/** A recorded attempt that cannot be read; its message is a sentence. */
export class TraceError extends Error {
  override readonly name = "TraceError";
}
