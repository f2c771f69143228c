import { type Claim, claimAdvice } from "../../statistics/claim";
import type { QuestionPaper, Sheet, Station } from "../sheet/sheet";
import { stationName } from "../sheet/stationName";
import { asksOf, type CriterionKind } from "./stationAsks";

/** One thing that is marked. */
export interface Criterion {
  readonly kind: CriterionKind;
  /** Index of the station, or null for the questions. */
  readonly station: number | null;
  /** Where, in words. */
  readonly place: string;
  /** Least or most that passes, in the unit of the kind. */
  readonly limit: number;
  /** Tries or questions there are. */
  readonly of: number;
  readonly claim?: Claim | undefined;
  /** What is asked, a sentence to be read before the start. */
  readonly asks: string;
}

/** All that a sitting is marked by, in order. */
export interface MarkingScheme {
  readonly criteria: readonly Criterion[];
  /** Two-sided level of the intervals that are given. */
  readonly level: number;
  /** Highest risk of a wrong verdict on a mean or a spread, either way. */
  readonly risk: number;
}

const LEVEL = 0.95;
const RISK = 0.05;

const stationCriteria = (station: Station, index: number): Criterion[] => {
  const asked = asksOf(station);
  const claim = station.kind === "dialing" ? station.passMarks.claim : undefined;
  const place = stationName(station, index);
  return asked.flatMap(([kind, limit, asks]) =>
    limit === undefined
      ? []
      : [
          {
            kind,
            station: index,
            place,
            limit,
            of: station.repetitions,
            asks,
            ...(kind === "claim" && { claim }),
          },
        ],
  );
};

const paperCriteria = (paper: QuestionPaper | undefined): Criterion[] => {
  if (paper === undefined) return [];
  const of = paper.topics.reduce((sum, { count }) => sum + count, 0);
  const asks = `At least ${paper.passMark} of ${of} questions are answered right.`;
  return [{ kind: "questions", station: null, place: "Questions", limit: paper.passMark, of, asks }];
};

/** The scheme that a sheet is marked by: every pass mark it names, and nothing else. */
export function markingScheme(sheet: Sheet): MarkingScheme {
  const criteria = [...sheet.stations.flatMap(stationCriteria), ...paperCriteria(sheet.sitting?.questions)];
  return { criteria, level: LEVEL, risk: RISK };
}

const COUNTED =
  "Counted. A try over the time limit or broken off does not count. From two tries on, the result says between which rates the true one lies (Wilson and Clopper-Pearson intervals).";
const MEASURED =
  "Measured. It passes or fails where the risk of a wrong verdict is at most 5 %; else the result is “not shown”";

/** In plain words first; the method's name comes after, for those who want it. */
const HOW: Readonly<Record<CriterionKind, string>> = {
  "first-time": COUNTED,
  claim: "Counted. It passes where a lower true rate would hardly bring so many (one-sided Clopper-Pearson bound).",
  "stop-error-bias": `${MEASURED} (Student's t).`,
  "stop-error-spread": `${MEASURED} (chi-squared).`,
  "faulty-tries": "Counted.",
  zeroed: "Each direction counts where its stops show that the mean is within tolerance (JCGM 106:2012).",
  refused: "Counted.",
  right: COUNTED,
  "size-error": `${MEASURED} (Student's t, one-sided).`,
  clean: COUNTED,
  "fit-faults": "Counted.",
  "visit-faults": "Counted.",
  mistakes: "Counted.",
  "mean-time": "Measured, over all tries that you end.",
  questions: "Counted.",
};

/**
 * The scheme as rows of text, to be printed before the start.
 *
 * @returns rows of three cells, a heading first: where, what is asked, how it is judged
 */
export function schemeRows({ criteria }: MarkingScheme): string[][] {
  return [
    ["Where", "What is asked", "How it is judged"],
    ...criteria.map(({ place, asks, kind }) => [place, asks, HOW[kind]]),
  ];
}

/** How many tries the claims of a scheme need, in sentences. */
export function schemeAdvice({ criteria }: MarkingScheme): string[] {
  return criteria.flatMap(({ claim }) => (claim === undefined ? [] : claimAdvice(claim)));
}
