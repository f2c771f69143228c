import { harmlessText } from "../../lock/harmlessText";
import { RecordingCopies } from "../../records/motion/sameRecordings";
import type { Command, Terminal } from "../terminal/command";
import { programVersion } from "../terminal/programVersion";
import { usageError } from "../terminal/usageError";
import { type CheckedRecord, checkedFile } from "./checkedFile";
import { withProgress } from "./progress";

const KINDS: Readonly<Record<CheckedRecord["kind"], string>> = {
  sitting: "sitting",
  handover: "handover record",
  logbook: "logbook",
  unknown: "file",
};

const indented = (sentences: readonly string[], mark: string) =>
  sentences.map((sentence) => `  ${mark} ${harmlessText(sentence)}\n`).join("");

/** A record in words: one line, and one for each thing to know. */
function inWords(one: CheckedRecord): string {
  const { file, kind, title, person, date, result, fingerprint, replayed, tries, standing, problems, remarks } = one;
  const facts = [
    title,
    person,
    date,
    result,
    fingerprint === null ? null : `sheet ${fingerprint}`,
    tries === null ? null : `${replayed} of ${tries} tries replayed`,
    standing,
  ].filter((fact) => fact !== null);
  const head = `${file}: ${KINDS[kind]}: ${facts.map(harmlessText).join("; ")}\n`;
  return `${head}${indented(problems, "!")}${indented(remarks, "-")}`;
}

type Write = (one: CheckedRecord | { readonly copy: string }) => Promise<void>;

/** Checks files one after another, and writes the records of each as soon as it is read. @returns how many do not check */
async function checkAll(files: readonly string[], terminal: Terminal, write: Write): Promise<number> {
  const version = programVersion();
  const copies = new RecordingCopies();
  let bad = 0;
  for (const [at, file] of files.entries()) {
    const told = `file ${at + 1} of ${files.length}, ${bad} records that do not check`;
    for (const checked of await checkedFile(file, withProgress(terminal, told), version, copies)) {
      bad += Math.min(1, checked.problems.length);
      await write(checked);
    }
  }
  for (const copy of copies.sentences) await write({ copy });
  return bad + copies.sentences.length;
}

/** `gatefall records check FILE...` */
export const recordsCommand: Command = {
  usage: `gatefall records check FILE... [--json]      (FILE "-" reads standard input)

Each FILE holds the record of a sitting, a handover record, or a logbook, as the app saves them. A sitting is checked
against its hash, its sheet and its seed, and every try at dialing that has a recording is replayed on its lock. Of a
logbook, every attempt is replayed, and every sitting in it is checked. Recordings that come under more than one name are
named.

One line tells of each record: sheet or door, person, date, result, the short fingerprint of the sheet, and how many tries
were replayed. "!" stands before what does not fit; such a record shows no result. "-" stands before what was not
checked. A hash is no signature: who knows the program can make up a whole record.
A recorded handover, which is a list of acts, is checked by "gatefall handover check".
The exit status is 0 when nothing speaks against any record ("-" lines may say what was not checked), 1 when something
does or a file is no such record, and 2 for a file that cannot be opened or is no JSON.

  --json          print JSON Lines, one record a line; {"copy": "..."} tells of recordings under several names`,
  options: { json: { type: "boolean" } },
  async run(words, options, terminal) {
    const [verb, ...files] = words;
    if (verb !== "check" || files.length === 0) throw usageError("wants-check-files", [], { command: "records" });
    const isJson = options.json === true;
    const bad = await checkAll(files, terminal, (one) =>
      terminal.write(isJson ? `${JSON.stringify(one)}\n` : "copy" in one ? indented([one.copy], "!") : inWords(one)),
    );
    return bad > 0 ? 1 : 0;
  },
};
