/** What can go wrong with keeping, reading or passing on records. Screens may word the code; the message is a sentence. */
export type LogbookErrorCode =
  /** This browser keeps nothing here: private mode, or storage switched off. */
  | "unavailable"
  /** Another tab holds an earlier version open. */
  | "blocked"
  /** The records were written by a newer version of the trainer. */
  | "newer-version"
  /** No room is left. */
  | "quota-full"
  /** The database has not answered for some seconds. */
  | "no-answer"
  /** The database was deleted or dropped while the page was open. */
  | "emptied"
  /** The browser refused to read or write for a reason of its own. */
  | "storage-failed"
  /** A record that no logbook takes. */
  | "bad-record"
  /** A trace that cannot be read. */
  | "bad-trace"
  /** A file that is no logbook, or a damaged one. */
  | "bad-file"
  /** Deleting a person before an export was offered. */
  | "export-not-offered";

/** A logbook that cannot do what it was asked; nothing that was kept has changed. */
export class LogbookError extends Error {
  override readonly name = "LogbookError";
  readonly code: LogbookErrorCode;

  /**
   * @param code - what is wrong, for a program
   * @param message - what is wrong, for a person
   */
  constructor(code: LogbookErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.code = code;
  }
}
