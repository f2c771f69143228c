import { ProblemError } from "../wording/problem";
import { TRACE_WORDS } from "./traceWords";

/** A recorded attempt that cannot be read. */
export class TraceError extends ProblemError {
  override readonly name = "TraceError";
  protected override readonly words = TRACE_WORDS;
}
