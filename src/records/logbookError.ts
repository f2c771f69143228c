import { ProblemError } from "../wording/problem";

/** A logbook that cannot do what it was asked; nothing that was saved has changed. Its words come with the storage. */
export abstract class LogbookError extends ProblemError {
  override readonly name = "LogbookError";
}
