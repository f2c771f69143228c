/** Takes a line for whoever started the server. */
export type Say = (line: string) => unknown;

/** Nobody wants to hear it. */
export const SILENT: Say = () => undefined;

/**
 * Said before the embedded database is opened: nothing more can be said until that is done.
 *
 * @param wasKilled - whether the server that had it before died with it
 */
export function openingLine(data: string, wasKilled: boolean): string {
  if (!wasKilled) return `Opening the database in ${data}. That takes some seconds.`;
  return (
    `Opening the database in ${data}. The server before this one was ended without being stopped, so the database first puts ` +
    "right what was being written. Nothing that was acknowledged is lost. On a busy machine this takes a minute or two."
  );
}

/** Said once the database is open. */
export const SETTING_UP = "The database is open. Setting up the server.";
