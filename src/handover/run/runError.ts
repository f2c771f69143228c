/** A recorded handover that cannot be read or cannot have happened; its message is a sentence. */
export class RunError extends Error {
  override readonly name = "RunError";
}
