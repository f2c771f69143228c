import { capital } from "../../../dialing/words";
import { markDoubts } from "../../../drill/sheet/markDoubts";
import { parseSheet, sheetDoubts } from "../../../drill/sheet/parseSheet";
import type { Sheet, Station } from "../../../drill/sheet/sheet";
import { SHEET_WORDS } from "../../../handover/sheetWords";
import { stationNeed } from "../../../handover/stationNeeds";
import { type Path, type Problem, ProblemError, pathText, under, wordsOf } from "../../../wording/problem";
import { blankSheet } from "./newSheet";

const EDITOR_WORDS = {
  ...SHEET_WORDS,
  // What stands in a field is known to who typed it.
  share: "must be from 50 to 99.9 %",
  "no-text": ": enter {least} to {most} characters",
  "no-title": ": enter a title of {least} to {most} characters",
  "not-a-number-typed": "{rule}; what is typed is not a number",
};

/** A problem as the editor words it: an empty field asks for text, and a number that is none is not shown. */
function inEditor(problem: Problem): Problem {
  const { code, path, values } = problem;
  if (code === "text" && values.found === "")
    return {
      code: path.at(-1) === "title" ? "no-title" : "no-text",
      path,
      values: { least: values.least, most: values.most },
    };
  if (!Number.isNaN(values.found)) return problem;
  const { found: _, ...others } = values;
  return { code: "not-a-number-typed", path, values: { rule: { code, path, values: others } } };
}

/** What is wrong with a field, as a sentence beside it. */
export function fieldSentence(problem: Problem): string {
  return `${capital(wordsOf(inEditor(problem), EDITOR_WORDS))}.`;
}

function problemOf(sheet: unknown): Problem[] {
  try {
    parseSheet(sheet);
    return [];
  } catch (error) {
    if (error instanceof ProblemError) return [error.problem];
    throw error;
  }
}

const stationProblems = (station: Station, index: number) =>
  problemOf({ ...blankSheet(), stations: [station] }).map(({ path, ...problem }) => ({
    ...problem,
    path: path[0] === "stations" && path.length > 1 ? ["stations", index, ...path.slice(2)] : path,
  }));

/** Ids that are there twice: all else of the stations is taken from a sound one. */
function idProblems({ stations }: Sheet): Problem[] {
  const [sound] = blankSheet().stations;
  return stations.length === 0
    ? []
    : problemOf({ ...blankSheet(), stations: stations.map(({ id }) => ({ ...sound, id })) });
}

/**
 * What is wrong with a sheet: at most one thing for each station and one for the rest.
 *
 * `parseSheet` stops at the first thing; each part is read by itself here, so that every field can tell.
 */
export function sheetProblems(sheet: Sheet): Problem[] {
  const whole = problemOf(sheet);
  if (whole.length === 0) return [];
  const frame = sheet.stations.length === 0 ? [] : problemOf({ ...sheet, stations: blankSheet().stations });
  const each = [...frame, ...sheet.stations.flatMap(stationProblems)];
  const ids = idProblems(sheet).filter(({ path }) => each.every((one) => pathText(one.path) !== pathText(path)));
  return each.length + ids.length > 0 ? [...each, ...ids] : whole;
}

/** What a sound sheet asks but hardly means, and what keeps it from being used. */
export function placedDoubts(sheet: Sheet): Problem[] {
  const needs = sheet.stations.flatMap((station, index) => {
    const need = stationNeed(station);
    return need === null ? [] : [under(["stations", index], need)];
  });
  return [...needs, ...markDoubts(sheet), ...sheetDoubts(sheet)];
}

const FIELDS: Readonly<Record<string, string>> = {
  stations: "stations",
  title: "title",
  purpose: "purpose",
  instructions: "instructions",
  cautions: "cautions",
  source: "source",
  order: "order of tries",
  seed: "seed",
  id: "short name",
  task: "what to do",
  help: "help",
  tolerance: "zero tolerance",
  readings: "stops that close a side",
  combinations: "combinations",
  list: "list of combinations",
  rules: "rules",
  minSeparation: "least distance between numbers",
  multiplesOfTen: "multiples of ten",
  excluded: "numbers never used",
  excludedLast: "last numbers never used",
  conditions: "conditions",
  kind: "kind",
  size: "size",
  from: "first try",
  passMarks: "pass marks",
  claim: "rate of opening to show",
  questions: "questions",
  topics: "questions",
  topic: "topic",
  sitting: "rules of the test",
  repetitions: "tries",
  profile: "lock",
  timeLimit_s: "time limit",
  firstTime: "right the first time",
  rate: "rate of opening to show",
  confidence: "confidence",
  stopErrorBias: "mean stop error",
  stopErrorSpread: "spread of the stop error",
  faultyTries: "tries with a fault",
  meanTime_s: "mean time",
  zeroed: "zeros within tolerance",
  refused: "refused stops",
  right: "right tries",
  clean: "clean handovers",
  sizeError: "mean error of the sizes named",
  pool: "defects that can be drawn",
  hand: "who dials",
  upTo: "numbers to dial",
  turnedBy: "what may turn the dial",
  lostSight: "what comes of a lost hand",
  passMark: "right answers needed to pass",
  count: "number of questions",
};

/** Where a field is, in words: "Station 2, tries". */
export function placeWords(path: Path): string {
  const last = path.findLast((key) => typeof key === "string" && key in FIELDS);
  const field = typeof last === "string" ? (FIELDS[last] ?? last) : "";
  const [list, station] = path;
  if (list !== "stations" || typeof station !== "number") return field === "" ? "Sheet" : capital(field);
  const place = `Station ${station + 1}`;
  return last === "stations" ? place : `${place}, ${field}`;
}
