/** An exercise that cannot be drawn: none of the conditions asked for fits the lock. */
export class TroubleError extends Error {
  override readonly name = "TroubleError";
}
