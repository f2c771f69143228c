import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { canonicalJson } from "../../src/drill/canonicalJson";
import type { Chance } from "../../src/statistics/chance";
import { sha256 } from "../support/keptRecord";
import { satRecord } from "../support/satRecord";
import { exportedBook } from "./exportedBook";
import { type Exceptions, fileOf, forge, isLetThrough, someErrors } from "./forgery";
import { spawnedCli, unseemly } from "./spawnedCli";
import { copyOf, type Json, pick, placesIn, placeText, putAt, valueAt } from "./tamper";
import type { Trial } from "./trial";

/*
 * One field of a genuine file is changed, and `gatefall records check` is asked about it as people start it: records of
 * sittings under their old hash and under one made anew, and exports of a logbook. Every change must be named, but those
 * that nothing hangs on; and what does not check ends with status 1, in words.
 */

/** What a forger of a logbook can change unnoticed: no recording and no record says anything of it. */
const OF_A_LOGBOOK: Exceptions = [
  [/^(exportedAt|version)$/, "when and by which format it was exported says nothing of a record"],
  [/\.(createdAt|updatedAt|revision)$/, "when a record was written last says nothing of what is in it"],
  [
    /^(people|zeroings|jobs|sittings|sheets|settings|declarations|attempts)(\[\d+\])?$/,
    "what is left out leaves no gap",
  ],
  [/^people\[\d+\]\.part$/, "a part that somebody chose"],
  [
    /^attempts\[\d+\]\.(id|startedAt|exercise|help|conditions|tags|estimate)/,
    "what stood around a motion does not show in it",
  ],
  [/^sittings\[\d+\]\.(id|state)$/, "a name; a sitting that goes on shows no result, and that it goes on is told"],
  [/^attempts\[\d+\]\.stops\[\d+\]\.(amplitude|number|step|time_ms|turn)$/, "of a stop, its error is made again"],
  [/^attempts\[\d+\]\.faults/, "another version may read them otherwise"],
  [/^attempts\[\d+\]\.trace$/, "another motion that comes to the same opening, stops and time bears it out as well"],
];

/** A file that was changed. */
interface Forged {
  readonly text: string;
  /** Which field was changed, and how it was hashed. */
  readonly change: string;
  /** Whether it may come out as sound. */
  readonly mayPass: boolean;
}

const FORGERIES_A_FILE = 14;

/** Records of one sitting with a field changed, under its old hash and under its own. */
async function forgedSittings(chance: Chance): Promise<{ genuine: string; forged: Forged[] }> {
  const genuine = copyOf(satRecord(someErrors(chance), Math.floor(1000 * chance())));
  const hash = sha256(canonicalJson(genuine));
  const forged = Array.from({ length: FORGERIES_A_FILE }, () => {
    const copy = copyOf(genuine);
    const at = pick(chance, placesIn(genuine));
    const change = forge(copy, at, chance);
    if (change === null) return [];
    return [
      { text: fileOf(copy, hash), change: `${change} under its old hash`, mayPass: false },
      { text: fileOf(copy), change: `${change}, hashed anew`, mayPass: isLetThrough(genuine, copy, at) },
    ];
  });
  return { genuine: fileOf(genuine), forged: forged.flat() };
}

/** A miss taken at its word: whatever it says of itself, it stays a miss. */
const isOfAMiss = (genuine: Json, place: string): boolean => {
  const [, index] = /^attempts\[(\d+)\]/.exec(place) ?? [];
  return index !== undefined && valueAt(genuine, ["attempts", Number(index), "opened"]) === false;
};

/** Whether a field of an export may be changed unnoticed. */
function mayPassInBook(genuine: Json, forged: Json, place: string): boolean {
  if (OF_A_LOGBOOK.some(([where]) => where.test(place))) return true;
  if (/^attempts\[\d+\]\.opened$/.test(place)) return !isOfAMiss(genuine, place);
  if (isOfAMiss(genuine, place)) return true;
  // Times are compared to a frame.
  const [, index = ""] = /^attempts\[(\d+)\]\.duration_ms$/.exec(place) ?? [];
  const lasts = (book: Json) => Number(valueAt(book, ["attempts", Number(index), "duration_ms"]));
  return index !== "" && Math.abs(lasts(genuine) - lasts(forged)) <= 50;
}

async function forgedBooks(chance: Chance): Promise<{ genuine: string; forged: Forged[] }> {
  const genuine = await exportedBook(chance);
  const beside = placesIn(genuine).filter((at) => !/\.body\b/.test(placeText(at)));
  const forged = Array.from({ length: 2 * FORGERIES_A_FILE }, () => {
    const copy = copyOf(genuine);
    const at = pick(chance, beside);
    const change = forge(copy, at, chance);
    if (change === null) return [];
    const mayPass = mayPassInBook(genuine, copy, placeText(at));
    return [{ text: JSON.stringify(copy), change: `logbook, ${change}`, mayPass }];
  });
  const inRecord = copyOf(genuine);
  putAt(inRecord, ["sittings", 0, "body", "record", "tries", 0, "opened"], "maybe");
  const damaged = { text: JSON.stringify(inRecord), change: "logbook, a try that is maybe opened", mayPass: false };
  return { genuine: JSON.stringify(genuine), forged: [...forged.flat(), damaged] };
}

interface Line {
  readonly file: string;
  readonly problems: readonly string[];
}

/** Why what was said of a forged file is not enough, or null. */
function unnoticed({ change, mayPass }: Forged, said: readonly Line[]): string | null {
  if (said.length === 0) return `${change}: not a word`;
  return !mayPass && said.every(({ problems }) => problems.length === 0) ? `${change}: sound` : null;
}

/** Checks a genuine file and its forgeries in one run. @returns what did not hold, or null */
async function check(
  folder: string,
  { genuine, forged }: { genuine: string; forged: Forged[] },
): Promise<string | null> {
  mkdirSync(folder, { recursive: true });
  const fileAt = (k: number) => join(folder, `${k}.json`);
  for (const [k, { text }] of [{ text: genuine }, ...forged].entries()) writeFileSync(fileAt(k), text);
  const alone = await spawnedCli(["records", "check", fileAt(0)], []);
  if (alone.status !== 0 || unseemly(alone) !== null) return `a genuine file is not sound: ${alone.out.slice(0, 400)}`;
  const files = forged.map((_, k) => fileAt(k + 1));
  const outcome = await spawnedCli(["records", "check", "--json", ...files], []);
  const bad = unseemly(outcome);
  if (bad !== null) return bad;
  if (outcome.status !== 1) return `forged files end with status ${outcome.status}`;
  const lines = outcome.out
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line) as Line | { copy: string });
  const said = lines.flatMap((line) => ("copy" in line ? [] : [line]));
  const verdicts = forged.map((one, k) =>
    unnoticed(
      one,
      said.filter(({ file }) => file === files[k]),
    ),
  );
  return verdicts.find((verdict) => verdict !== null) ?? null;
}

export const trial: Trial = {
  name: "forged records and logbooks, checked on the command line",
  run: async ({ chance, folder, hasTime, pass, fail }) => {
    for (let round = 1; round === 1 || hasTime(); round++) {
      for (const [kind, make] of Object.entries({ forgedSittings, forgedBooks })) {
        const misfit = await check(join(folder, `${round}-${kind}`), await make(chance));
        if (misfit === null) pass();
        else fail(`round ${round}, ${kind}: ${misfit}`);
      }
    }
  },
};
