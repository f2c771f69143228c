import { DrillError } from "../../../drill/drillError";
import { markDoubts } from "../../../drill/sheet/markDoubts";
import { parseSheet, sheetDoubts } from "../../../drill/sheet/parseSheet";
import type { Sheet, Station } from "../../../drill/sheet/sheet";
import { stationNeed } from "../../../handover/stationNeeds";
import { blankSheet } from "./newSheet";

/** What is wrong with a sheet, and where. */
export interface PlacedProblem {
  /** Path of the field, such as `stations[0].passMarks.firstTime`; empty for the sheet as a whole. */
  readonly path: string;
  /** A sentence to stand beside the field. */
  readonly says: string;
}

const sentence = (words: string) =>
  `${words.charAt(0).toUpperCase()}${words.slice(1)}.`
    .replace(", not NaN", ", not what is typed")
    .replace("a share from 0.5 to 0.999, such as 0.9", "from 50 to 99.9 %")
    .replace("a share between 0 and 1, such as 0.9", "from 50 to 99.9 %");

/**
 * A sentence of `parseSheet` or `sheetDoubts`, taken apart into place and words.
 *
 * @param message - such as "sheet: stations[0].repetitions must be a whole number"
 */
export function placed(message: string): PlacedProblem {
  const words = message.replace(/^sheet: /, "");
  const [, path = "", says = words] = /^(this(?= )|[a-zA-Z_]+(?:\[\d+\]|\.[\w-]+)*):? (.*)$/s.exec(words) ?? [];
  const [, length] = /^must be a text of (1 to \d+ characters), not ""$/.exec(says) ?? [];
  if (length !== undefined) return { path, says: `Enter ${path === "title" ? "a title of " : ""}${length}.` };
  return { path: path === "this" ? "" : path, says: sentence(says) };
}

function problemOf(sheet: unknown): PlacedProblem[] {
  try {
    parseSheet(sheet);
    return [];
  } catch (error) {
    if (error instanceof DrillError) return [placed(error.message)];
    throw error;
  }
}

const atStation = (index: number) => (problem: PlacedProblem) => ({
  ...problem,
  path: problem.path.replace("stations[0]", `stations[${index}]`),
});

const stationProblems = (station: Station, index: number) =>
  problemOf({ ...blankSheet(), stations: [station] }).map(atStation(index));

/** Ids that are there twice: all else of the stations is taken from a sound one. */
function idProblems({ stations }: Sheet): PlacedProblem[] {
  const [sound] = blankSheet().stations;
  return stations.length === 0
    ? []
    : problemOf({ ...blankSheet(), stations: stations.map(({ id }) => ({ ...sound, id })) });
}

/**
 * What is wrong with a sheet: at most one sentence for each station and one for the rest.
 *
 * `parseSheet` stops at the first thing; each part is read by itself here, so that every field can tell.
 */
export function sheetProblems(sheet: Sheet): PlacedProblem[] {
  const whole = problemOf(sheet);
  if (whole.length === 0) return [];
  const frame = sheet.stations.length === 0 ? [] : problemOf({ ...sheet, stations: blankSheet().stations });
  const each = [...frame, ...sheet.stations.flatMap(stationProblems)];
  const ids = idProblems(sheet).filter(({ path }) => each.every((one) => one.path !== path));
  return each.length + ids.length > 0 ? [...each, ...ids] : whole;
}

/** What no exercise can be set up for: the sheet is sound, and cannot be sat. */
const placedNeeds = ({ stations }: Sheet): PlacedProblem[] =>
  stations.flatMap((station, index) => {
    const need = stationNeed(station);
    return need === null ? [] : [{ path: `stations[${index}].${need.field}`, says: sentence(need.says) }];
  });

/** What a sound sheet asks but hardly means, and what keeps it from being used, with its place. */
export function placedDoubts(sheet: Sheet): PlacedProblem[] {
  return [...placedNeeds(sheet), ...markDoubts(sheet), ...sheetDoubts(sheet).map(placed)];
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
  passMark: "right answers needed to pass",
  count: "number of questions",
};

/** Where a field is, in words: "Station 2, tries". */
export function placeWords(path: string): string {
  const [, station] = /^stations\[(\d+)\]/.exec(path) ?? [];
  const last =
    path
      .replace(/\[\d+\]/g, "")
      .split(".")
      .at(-1) ?? "";
  const field = FIELDS[last] ?? last;
  if (station === undefined) return field === "" ? "Sheet" : `${field.charAt(0).toUpperCase()}${field.slice(1)}`;
  const place = `Station ${Number(station) + 1}`;
  return last === "stations" ? place : `${place}, ${field}`;
}
