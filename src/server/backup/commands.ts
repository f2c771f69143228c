import { countText } from "../../wording/amountWords";
import { problemText } from "../../wording/problem";
import type { OpenDatabase } from "../database/openDatabase";
import { SERVER_WORDS } from "../words/serverWords";
import type { KeyStore } from "../world/keyStore";
import { checkDatabase, type SchoolCheck } from "./checkDatabase";
import { restoreBackup } from "./restoreBackup";
import { type RowCounts, writeBackup } from "./writeBackup";

/** What is done with a database that no server of this data folder runs on. */
export type DataCommand = { readonly verb: "backup" | "restore"; readonly file: string } | { readonly verb: "check" };

/** What came of it: lines for the terminal, and whether all is well. */
export interface Outcome {
  readonly lines: readonly string[];
  readonly isWell: boolean;
}

const rowsText = (counts: RowCounts) =>
  `${countText(counts.schools ?? 0, "school", "schools")}, ${countText(counts.people ?? 0, "person", "people")}, ${countText(counts.records ?? 0, "record", "records")}`;

/** What to do where a check finds something. */
const NOT_SOUND =
  "The database or a key was changed outside the server. Keep both as they are; restore the last backup that checks well into another folder.";

/** What checking a school came to, in lines. */
export const checkText = ({ school, records, deleted, links, keys, problems }: SchoolCheck): string[] => [
  `${school}: ${countText(records, "record", "records")}, ${deleted} deleted, ${countText(links, "link", "links")}, ${countText(keys, "key", "keys")}: ${problems.length === 0 ? "sound" : "NOT SOUND"}`,
  ...problems.map((problem) => `  ! ${problemText(problem, SERVER_WORDS)}`),
];

/** Makes a backup, puts one back, or checks a database. @throws {ServerError} */
export async function runCommand(
  command: DataCommand,
  { query, place }: Pick<OpenDatabase, "query" | "place">,
  keys: KeyStore,
  now: number,
): Promise<Outcome> {
  if (command.verb === "check") {
    const checks = await checkDatabase(query, keys);
    const lines = checks.length === 0 ? ["There is no school in this database."] : checks.flatMap(checkText);
    const isWell = checks.every(({ problems }) => problems.length === 0);
    return { lines: isWell ? lines : [...lines, NOT_SOUND], isWell };
  }
  if (command.verb === "backup") {
    const counts = await writeBackup(query, command.file, now);
    const keysTo = "The private keys in the folder keys are not in it: copy that folder too, to another place.";
    return { lines: [`${command.file}: ${rowsText(counts)}.`, keysTo], isWell: true };
  }
  const counts = await restoreBackup(query, command.file, place);
  return { lines: [`Restored from ${command.file}: ${rowsText(counts)}.`], isWell: true };
}
