import { type Claim, claimAdvice, claimText } from "../../statistics/claim";
import type { QuestionPaper, Sheet, Station } from "../sheet/sheet";
import { stationName } from "../sheet/stationName";
import { PROOFS_WANTED } from "./jobRule";

/** What one criterion looks at. */
export type CriterionKind =
  | "first-time"
  | "claim"
  | "stop-error-bias"
  | "stop-error-spread"
  | "faulty-tries"
  | "zeroed"
  | "refused"
  | "right"
  | "size-error"
  | "clean"
  | "fit-faults"
  | "visit-faults"
  | "mean-time"
  | "questions";

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

/** What a kind of criterion asks for, given its limit and the number of tries; undefined where it is not asked. */
type Asked = readonly [kind: CriterionKind, limit: number | undefined, asks: string];

const meanTimeAsks = (meanTime_s: number | undefined): Asked => [
  "mean-time",
  meanTime_s,
  `A try takes at most ${meanTime_s} s on average.`,
];

const faultyAsks = (faultyTries: number | undefined, repetitions: number): Asked => [
  "faulty-tries",
  faultyTries,
  `At most ${faultyTries} of ${repetitions} tries have a fault.`,
];

const dialingAsks = (station: Station & { kind: "dialing" }): Asked[] => {
  const { passMarks: marks, repetitions, upTo } = station;
  const right = upTo === undefined ? "open the first time" : "are without fault";
  return [
    ["first-time", marks.firstTime, `At least ${marks.firstTime} of ${repetitions} tries ${right}.`],
    ["claim", marks.claim?.rate, marks.claim === undefined ? "" : `The tries show ${claimText(marks.claim)}.`],
    [
      "stop-error-bias",
      marks.stopErrorBias,
      `The mean stop error lies within ${marks.stopErrorBias} graduations of 0.`,
    ],
    [
      "stop-error-spread",
      marks.stopErrorSpread,
      `The spread of the stop errors is at most ${marks.stopErrorSpread} graduations.`,
    ],
    faultyAsks(marks.faultyTries, repetitions),
    meanTimeAsks(marks.meanTime_s),
  ];
};

const zeroingAsks = ({ passMarks: marks, repetitions }: Station & { kind: "zeroing" }): Asked[] => [
  [
    "zeroed",
    marks.zeroed,
    `At least ${marks.zeroed} of ${repetitions} zeros are shown to be good turning right and turning left.`,
  ],
  ["refused", marks.refused, `At most ${marks.refused} stops are refused.`],
  meanTimeAsks(marks.meanTime_s),
];

const changeAsks = ({ passMarks: marks, repetitions }: Station & { kind: "change" }): Asked[] => [
  [
    "right",
    marks.right,
    `At least ${marks.right} of ${repetitions} changes open as written and are proved ${PROOFS_WANTED} times.`,
  ],
  faultyAsks(marks.faultyTries, repetitions),
  meanTimeAsks(marks.meanTime_s),
];

const troubleAsks = ({ passMarks: marks, repetitions }: Station & { kind: "trouble" }): Asked[] => [
  ["right", marks.right, `At least ${marks.right} of ${repetitions} defects are named right.`],
  [
    "size-error",
    marks.sizeError,
    `Where the defect is named right, the size named is off by at most ${marks.sizeError} graduations on average.`,
  ],
  meanTimeAsks(marks.meanTime_s),
];

const handoverAsks = ({ passMarks: marks, repetitions }: Station & { kind: "handover" }): Asked[] => [
  ["clean", marks.clean, `At least ${marks.clean} of ${repetitions} handovers have nothing missing and no fault.`],
  faultyAsks(marks.faultyTries, repetitions),
  meanTimeAsks(marks.meanTime_s),
];

const fittingAsks = ({ passMarks: marks, repetitions }: Station & { kind: "fitting" }): Asked[] => [
  ["right", marks.right, `At least ${marks.right} of ${repetitions} fits have nothing wrong.`],
  [
    "fit-faults",
    marks.faults,
    `Every try ends with a dial that you say is fitted, and all fits together have at most ${marks.faults} faults.`,
  ],
  meanTimeAsks(marks.meanTime_s),
];

const serviceAsks = ({ passMarks: marks, repetitions }: Station & { kind: "service" }): Asked[] => [
  ["right", marks.right, `At least ${marks.right} of ${repetitions} visits have nothing left out and no fault.`],
  [
    "visit-faults",
    marks.faults,
    `Every try ends with the site left, and all visits together have at most ${marks.faults} faults.`,
  ],
  meanTimeAsks(marks.meanTime_s),
];

function asksOf(station: Station): Asked[] {
  switch (station.kind) {
    case "dialing":
      return dialingAsks(station);
    case "zeroing":
      return zeroingAsks(station);
    case "change":
      return changeAsks(station);
    case "trouble":
      return troubleAsks(station);
    case "handover":
      return handoverAsks(station);
    case "fitting":
      return fittingAsks(station);
    case "service":
      return serviceAsks(station);
  }
}

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
  "Counted. A try over the time limit or broken off does not count. The result says between which rates the true one lies (Wilson and Clopper-Pearson intervals).";
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
