import { faultTitle } from "../../dialing/faultName";
import type { Verdict } from "../../drill/marking/evidence";
import { isAdmitted } from "../../drill/marking/isAdmitted";
import { isDoubtAdmitted } from "../../drill/marking/lostSight";
import { markingScheme, schemeAdvice } from "../../drill/marking/markingScheme";
import { type DialingTry, isRight, type TryResult, zeroShown } from "../../drill/marking/tryResult";
import type { Sheet, Station } from "../../drill/sheet/sheet";
import { stationName } from "../../drill/sheet/stationName";
import { stationProfile } from "../../drill/sheet/stationProfile";
import type { SittingEnd } from "../../drill/sitting/sittingMemory";
import { sittingPlan } from "../../drill/sitting/sittingPlan";
import type { Milliseconds } from "../../lock/dial";
import { isDoubted } from "../../realdial/sources/dialDoubt";
import { firstNumbersWords } from "../../records/exercise";
import type { SittingRecord } from "../../records/sitting/sittingRecord";
import { claimText, trialsToShow } from "../../statistics/claim";
import { countText } from "../../wording/amountWords";
import { signedText } from "../parts/signedText";
import { timeText } from "../parts/timeText";
import { begunAgainWords, lostSightSentence, TURNS_IN_DOUBT } from "../results/doubtWords";
import { exerciseWords, spanText, stationHelp } from "../results/sheetWords";
import { admissionSentence, turnedWithText } from "../results/sourceWords";
import { jobMeasured } from "./jobTryWords";

/** A time as a clock shows it: "4:05", "1:12:00". */
export function clockText(time_ms: Milliseconds): string {
  return timeText(Math.max(0, Math.floor(time_ms / 1000)));
}

/** A limit as one says it: "90 s", "1 h 30 min". */
export const spanWords = (span_ms: Milliseconds): string => spanText(span_ms / 1000);

/** The rules that a sheet is sat by, in sentences. */
export function ruleSentences(sheet: Sheet): string[] {
  const { tries, questions, pauseAllowed, onReload, timeLimit_ms } = sittingPlan(sheet);
  const work = questions > 0 ? `, then ${countText(questions, "question", "questions")}` : "";
  return [
    `You have ${countText(tries, "try", "tries")}${work}. The result is shown after the sitting.`,
    timeLimit_ms === null
      ? "There is no time limit for the whole sitting."
      : `You have ${spanWords(timeLimit_ms)} in all. Whatever is not done by then counts as missed.`,
    pauseAllowed
      ? "You may pause between tries. The record shows how often and how long."
      : "You cannot pause. The clock runs until the end.",
    reloadSentence(pauseAllowed, onReload),
    ...sheet.stations.flatMap((station, index) =>
      [admissionSentence(station), lostSightSentence(station)].flatMap((rule) =>
        rule === null ? [] : [`${stationName(station, index)}: ${rule}`],
      ),
    ),
  ];
}

/** What comes of a page that is closed or reloaded. */
function reloadSentence(pauseAllowed: boolean, onReload: "resume" | "broken-off"): string {
  if (onReload === "broken-off")
    return "If you close or reload the page, the sitting ends and is recorded as broken off.";
  const clock = pauseAllowed ? "The clock stops until you go on." : "The clock runs on.";
  return `If you close or reload the page, the try you are in is lost. ${clock} The record shows it.`;
}

const HELPS: Readonly<Record<Station["help"], string>> = {
  full: "full help",
  counts: "arrivals counted",
  silent: "no help",
};

/** A station as a row: its title, what one does there, its lock, its help, its tries and its time. */
export function stationRow(station: Station, index: number): string[] {
  const limit = station.timeLimit_s === undefined ? "no limit" : `at most ${spanText(station.timeLimit_s)} a try`;
  const upTo =
    station.kind === "dialing" && station.upTo !== undefined ? ` (${firstNumbersWords(station.upTo)} only)` : "";
  return [
    stationName(station, index),
    `${station.kind === "dialing" ? "dial " : ""}${exerciseWords(station)}`,
    `${stationProfile(station).title}${upTo}`,
    stationHelp(station, HELPS),
    String(station.repetitions),
    limit,
  ];
}

/** A verdict in a word, for one criterion. */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  pass: "passed",
  fail: "missed",
  "not shown": "not shown",
};

const HEADLINES: Readonly<Record<Verdict, string>> = {
  pass: "Passed.",
  fail: "Not passed.",
  "not shown": "Not shown yet: the tries so far cannot tell.",
};

/** What a sitting came to, in a sentence. */
export function verdictHeadline({ marking, ended }: Pick<SittingRecord, "marking" | "ended">): string {
  return ended === "broken-off" && marking.verdict !== "fail"
    ? "Broken off before the end."
    : HEADLINES[marking.verdict];
}

/** How a sitting ended, in a sentence. */
export const END_SENTENCES: Readonly<Record<SittingEnd, string>> = {
  finished: "The sitting was finished.",
  time: "Time ran out. Whatever was not done counts as missed.",
  "broken-off": "The sitting was broken off. Whatever was not done is left open.",
};

/** What a claim still wants, from the tries made. */
function claimSentences({ sheet, tries, marking }: SittingRecord): string[] {
  return marking.marks.flatMap(({ criterion, verdict }) => {
    const { claim, station: index } = criterion;
    const station = sheet.stations[index ?? -1];
    if (claim === undefined || station === undefined || verdict === "pass") return [];
    const made = tries.filter((one) => one.kind === "dialing" && one.station === index);
    const misses = made.filter((one) => one.kind === "dialing" && !isRight(one, station)).length;
    const wanted = trialsToShow(claim, misses);
    const missed = countText(misses, "miss", "misses");
    return [
      `${criterion.place}: with ${missed}, it takes ${wanted} tries to show ${claimText(claim)}. You made ${made.length}.`,
    ];
  });
}

/** What to make of a result, in sentences. */
export function resultAdvice(record: SittingRecord): string[] {
  return [...claimSentences(record), ...schemeAdvice(markingScheme(record.sheet))];
}

/** One try as a row of text. */
export interface TryRow {
  readonly place: string;
  readonly outcome: string;
  readonly stops: string;
  readonly faults: string;
  readonly time: string;
  /** What turned the dial, where that was more than the screen; else null. */
  readonly turnedWith: string | null;
}

const seconds = (time_ms: Milliseconds) => `${(time_ms / 1000).toFixed(1)} s`;

/** What a device did to a try: its turns in doubt, or begun again for that. */
const lostHand = ({ doubts, begunAgain }: Pick<DialingTry, "doubts" | "begunAgain">): string =>
  [isDoubted({ doubts }) ? TURNS_IN_DOUBT : "", begunAgainWords(begunAgain)]
    .filter((words) => words !== "")
    .map((words) => `, ${words}`)
    .join("");

function dialingOutcome(one: TryResult & { kind: "dialing" }, station: Station): string {
  if (isRight(one, station)) return station.kind === "dialing" && station.upTo !== undefined ? "right" : "opened";
  if (one.opened && !isAdmitted(one, station)) return "opened, source not admitted";
  if (one.opened && !isDoubtAdmitted(one, station)) return "opened, not counted";
  return one.opened ? "opened too late" : "not right";
}

const ZERO_WORDS = { accept: "shown to be good", reject: "not good", "not shown yet": "not shown" } as const;
const meanText = (mean: number | null) => (mean === null ? "open" : signedText(mean));

function measured(one: TryResult, station: Station): Pick<TryRow, "outcome" | "stops" | "faults"> {
  if (one.kind === "dialing") {
    return {
      outcome: `${dialingOutcome(one, station)}${lostHand(one)}`,
      stops: one.stopErrors.map((error, k) => `${k + 1}: ${error === null ? "–" : signedText(error)}`).join(" · "),
      faults: one.faults.map(({ code, number }) => faultTitle(code, number)).join("; ") || "none",
    };
  }
  if (one.kind !== "zeroing") {
    const words = jobMeasured(one, station);
    return "doubts" in one ? { ...words, outcome: `${words.outcome}${lostHand(one)}` } : words;
  }
  return {
    outcome: `${isAdmitted(one, station) ? ZERO_WORDS[zeroShown(one, station)] : "source not admitted"}${lostHand(one)}`,
    stops: `turning right: ${meanText(one.means.right)} · turning left: ${meanText(one.means.left)}`,
    faults: `${countText(one.refused, "stop", "stops")} refused`,
  };
}

const turnedWith = (one: TryResult) =>
  "sources" in one && one.sources !== undefined ? `Turned with ${turnedWithText(one)}` : null;

/** One try as a row of the result. */
export function tryRow(one: TryResult, sheet: Sheet): TryRow {
  const station = sheet.stations[one.station];
  if (station === undefined) throw new Error(`the sheet has no station ${one.station}`);
  const place = `${stationName(station, one.station)}, try ${one.repetition}`;
  if (one.isBrokenOff)
    return { place, outcome: "lost to a reload", stops: "–", faults: "–", time: "–", turnedWith: null };
  return { place, ...measured(one, station), time: seconds(one.time_ms), turnedWith: turnedWith(one) };
}
