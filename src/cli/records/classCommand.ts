import { harmlessText } from "../../lock/harmlessText";
import { type ClassCell, type ClassTable, classTable } from "../../progress/classTable";
import { classCsv } from "../../progress/csv/classCsv";
import type { Hand } from "../../realdial/sources/handOf";
import { SOURCE_KINDS } from "../../realdial/sources/sourceKinds";
import { LogbookReading } from "../../records/file/logbookReading";
import { Misfits } from "../../records/file/replayedAttempts";
import { FileError, fileSentences } from "../../records/fileWords";
import { joinContents, type LogbookContents } from "../../records/logbookContents";
import type { Command, OptionValues, Terminal } from "../terminal/command";
import { usageError } from "../terminal/usageError";
import { withProgress } from "./progress";
import { StreamedFile } from "./streamedFile";

const FORMATS = ["text", "csv", "json"] as const;
type Format = (typeof FORMATS)[number];

function formatOf({ format = "text" }: OptionValues): Format {
  const found = FORMATS.find((one) => one === format);
  if (found === undefined) throw usageError("one-of-formats", ["--format"], { formats: FORMATS, found: format });
  return found;
}

const HANDS: readonly Hand[] = [...SOURCE_KINDS, "mixed"];

/** The hand whose tries count; undefined where none is named. */
function wantedHand({ hand }: OptionValues): Hand | undefined {
  const found = HANDS.find((one) => one === hand);
  if (hand !== undefined && found === undefined)
    throw usageError("one-of", ["--hand"], { choices: HANDS, found: hand });
  return found;
}

const DAY_MS = 86_400_000;

/** The end of the day that readiness is counted up to, milliseconds since 1970. */
function momentOf({ on }: OptionValues, now: number): number {
  if (on === undefined) return now;
  const day = typeof on === "string" && /^\d{4}-\d{2}-\d{2}$/.test(on) ? Date.parse(on) : Number.NaN;
  if (Number.isNaN(day)) throw usageError("day", ["--on"], { example: "2026-11-28", found: on });
  return day + DAY_MS - 1;
}

/** One logbook, without the attempts that their recordings do not bear out, and why these are left out. */
async function read(file: string, terminal: Terminal) {
  const source = new StreamedFile(file);
  const misfits = new Misfits();
  // Motions have been replayed and are of no more use, as what sittings hold: a class of many logbooks has to fit.
  const reading = new LogbookReading(() => source.bytes, {
    attempt: (record, motion) => {
      misfits.replay(record, () => motion);
      return [record, undefined];
    },
    sitting: (record) => ({ ...record, body: null }),
    isReplayed: true,
  });
  try {
    const { remarks, ...contents } = reading.end(await source.read(terminal, reading));
    const { contents: kept, leftOut } = misfits.leaveOut(contents);
    return { kept, sentences: fileSentences([...remarks, ...leftOut]).map((sentence) => `${file}: ${sentence}`) };
  } catch (error) {
    if (error instanceof FileError) throw usageError("file-refused", [], { file, why: error.message });
    throw error;
  }
}

const STATES = { ready: "ready", lapsed: "no longer ready", "not-yet": "not ready yet" } as const;

const cellText = (cell: ClassCell | null) =>
  cell === null ? "-" : `${STATES[cell.mastery.state]}, ${cell.openings.opened} of ${cell.openings.trials}`;

/** Rows in columns as wide as what is in them. */
function inColumns(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, k) => Math.max(...rows.map((row) => row[k]?.length ?? 0)));
  return rows
    .map(
      (row) =>
        `${row
          .map((cell, k) => cell.padEnd(widths[k] ?? 0))
          .join("  ")
          .trimEnd()}\n`,
    )
    .join("");
}

function inWords({ skills, rows, hand }: ClassTable): string {
  if (rows.length === 0) return "There is no trainee in these logbooks.\n";
  const head = ["person", ...skills.map(({ profileId, exercise }) => `${profileId}, ${exercise}`), "ready at all"];
  const lines = rows.map(({ person, cells, isReady }) => [person.name, ...cells.map(cellText), isReady ? "yes" : "no"]);
  const turned = hand === "screen" ? "" : `Only what was turned by this counts: ${hand}.\n`;
  return turned + inColumns([head, ...lines].map((row) => row.map(harmlessText)));
}

const inJson = ({ skills, rows, hand }: ClassTable) =>
  `${JSON.stringify(
    rows.map(({ person, cells, isReady }) => ({
      person: person.name,
      personId: person.id,
      turnedBy: hand,
      isReadyAtAll: isReady,
      skills: skills.flatMap((skill, k) => {
        const cell = cells[k];
        if (!cell) return [];
        const { state, shownAt, wanted, message } = cell.mastery;
        return [
          {
            ...skill,
            attempts: cell.attempts,
            openings: cell.openings,
            stops: cell.stops,
            state,
            shownAt,
            wanted,
            message,
          },
        ];
      }),
    })),
    null,
    2,
  )}\n`;

const WRITTEN: Readonly<Record<Format, (table: ClassTable) => string>> = {
  text: inWords,
  csv: classCsv,
  json: inJson,
};

/** `gatefall class FILE...` */
export const classCommand: Command = {
  usage: `gatefall class FILE... [--format text|csv|json] [--on DAY] [--hand HAND]      (FILE "-" reads standard input)

Each FILE is a logbook, as the app exports it; the logbooks of many machines make one table, and whoever is in several of
them counts once. Every attempt is replayed first: one that its recording does not bear out is left out, and standard
error says so. Readiness goes by the usual rule and lapses after a time without practice.
The exit status is 0, 1 when something was repaired or left out, and 2 for a file that cannot be read.

  --format F      text (a table in columns), csv (one person and skill a row), or json; text if left out
  --on DAY        the day that readiness is told for, such as 2026-11-28; today if left out
  --hand HAND     what turned the dial: no figure mixes two hands. One of ${HANDS.join(", ")};
                  if left out, the screen where anyone used it, else what was used last`,
  options: { format: { type: "string" }, on: { type: "string" }, hand: { type: "string" } },
  async run(files, options, terminal) {
    const format = formatOf(options);
    const now = momentOf(options, Date.now());
    const hand = wantedHand(options);
    if (files.length === 0) throw usageError("wants-logbooks", [], { command: "class" });
    const logbooks: LogbookContents[] = [];
    let complaints = 0;
    for (const [at, file] of files.entries()) {
      const { kept, sentences } = await read(file, withProgress(terminal, `logbook ${at + 1} of ${files.length}`));
      logbooks.push(kept);
      for (const sentence of sentences) terminal.complain(harmlessText(sentence));
      complaints += sentences.length;
    }
    await terminal.write(WRITTEN[format](classTable([joinContents(logbooks)], undefined, { now, hand })));
    return complaints > 0 ? 1 : 0;
  },
};
