import { harmlessText } from "../../lock/harmlessText";
import { RecordingCopies } from "../../records/motion/sameRecordings";
import { typedFingerprint } from "../../school/signing/fingerprint";
import { fingerprintsOf } from "../../school/signing/schoolKeys";
import type { Command, Terminal } from "../terminal/command";
import { jsonFile } from "../terminal/jsonFile";
import { programVersion } from "../terminal/programVersion";
import { usageError } from "../terminal/usageError";
import { type CheckedRecord, type Checking, checkedFile } from "./checkedFile";
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
  const { file, kind, title, person, date, result, fingerprint, replayed, tries, standing, problems, remarks, signed } =
    one;
  const facts = [
    title,
    person,
    date,
    result,
    fingerprint === null ? null : `sheet ${fingerprint}`,
    tries === null ? null : `${replayed} of ${tries} tries replayed`,
    standing,
    signed,
  ].filter((fact) => fact !== null);
  const head = `${file}: ${KINDS[kind]}: ${facts.map(harmlessText).join("; ")}\n`;
  return `${head}${indented(problems, "!")}${indented(remarks, "-")}`;
}

type Write = (one: CheckedRecord | { readonly copy: string }) => Promise<void>;

/** Checks files one after another, and writes the records of each as soon as it is read. @returns how many do not check */
async function checkAll(
  files: readonly string[],
  trusted: Checking["trusted"],
  terminal: Terminal,
  write: Write,
): Promise<number> {
  const copies = new RecordingCopies();
  const checking = { version: programVersion(), trusted, copies };
  let bad = 0;
  for (const [at, file] of files.entries()) {
    const told = `file ${at + 1} of ${files.length}, ${bad} records that do not check`;
    for (const checked of await checkedFile(file, withProgress(terminal, told), checking)) {
      bad += Math.min(1, checked.problems.length);
      await write(checked);
    }
  }
  for (const copy of copies.sentences) await write({ copy });
  return bad + copies.sentences.length;
}

/** The keys that a signature may be made with: a fingerprint off a print, or a file of keys. */
async function trustedKeys(given: unknown, terminal: Terminal): Promise<Checking["trusted"]> {
  if (typeof given !== "string") return null;
  const typed = typedFingerprint(given);
  if (typed !== null) return [typed];
  const keys = fingerprintsOf(await jsonFile(given, terminal));
  if (keys === null) throw usageError("no-keys", [given]);
  return keys;
}

/** `gatefall records check FILE...` */
export const recordsCommand: Command = {
  usage: `gatefall records check FILE... [--key KEY] [--json]      (FILE "-" reads standard input)

Each FILE holds the record of a sitting, a handover record, or a logbook, as the app saves them. A sitting is checked
against its hash, its sheet and its seed, and every try at dialing that has a recording is replayed on its lock. Of a
logbook, every attempt is replayed, and every sitting in it is checked. Recordings that come under more than one name are
named.

One line tells of each record: sheet or door, person, date, result, the short fingerprint of the sheet, and how many tries
were replayed. "!" stands before what does not fit; such a record shows no result. "-" stands before what was not
checked. A hash is no signature: who knows the program can make up a whole record.
A record that a class server signed is checked against the key of the school. The signature proves who received what
when, and that it was not changed. It does not prove who turned the dial.
A recorded handover, which is a list of acts, is checked by "gatefall handover check".
The exit status is 0 when nothing speaks against any record ("-" lines may say what was not checked), 1 when something
does or a file is no such record, and 2 for a file that cannot be opened or is no JSON.

  --key KEY       key of the school: its fingerprint, as printed, or the file of its keys
  --json          print JSON Lines, one record a line; {"copy": "..."} tells of recordings under several names`,
  options: { json: { type: "boolean" }, key: { type: "string" } },
  async run(words, options, terminal) {
    const [verb, ...files] = words;
    if (verb !== "check" || files.length === 0) throw usageError("wants-check-files", [], { command: "records" });
    const isJson = options.json === true;
    const trusted = await trustedKeys(options.key, terminal);
    const bad = await checkAll(files, trusted, terminal, (one) =>
      terminal.write(isJson ? `${JSON.stringify(one)}\n` : "copy" in one ? indented([one.copy], "!") : inWords(one)),
    );
    return bad > 0 ? 1 : 0;
  },
};
