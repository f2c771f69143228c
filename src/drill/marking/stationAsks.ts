import { claimText } from "../../statistics/claim";
import { countText } from "../../wording/amountWords";
import type { Station } from "../sheet/sheet";
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
  | "mistakes"
  | "mean-time"
  | "questions";

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

/** So many faults; a mark that is not asked for has a sentence that nobody reads. */
const faultsText = (most = 0) => countText(most, "fault");

const fittingAsks = ({ passMarks: marks, repetitions }: Station & { kind: "fitting" }): Asked[] => [
  ["right", marks.right, `At least ${marks.right} of ${repetitions} fits must have nothing wrong.`],
  [
    "fit-faults",
    marks.faults,
    `Every try ends with a dial that you say is fitted, and all fits together have at most ${faultsText(marks.faults)}.`,
  ],
  meanTimeAsks(marks.meanTime_s),
];

const serviceAsks = ({ passMarks: marks, repetitions }: Station & { kind: "service" }): Asked[] => [
  ["right", marks.right, `At least ${marks.right} of ${repetitions} visits must have nothing left out and no fault.`],
  [
    "visit-faults",
    marks.faults,
    `Every try ends with the site left, and all visits together have at most ${faultsText(marks.faults)}.`,
  ],
  meanTimeAsks(marks.meanTime_s),
];

const inspectionAsks = ({ passMarks: marks, repetitions }: Station & { kind: "inspection" }): Asked[] => [
  [
    "right",
    marks.right,
    `At least ${marks.right} of ${repetitions} fits must be judged right: all that is wrong is named and nothing else, each after a check that shows it.`,
  ],
  [
    "mistakes",
    marks.mistakes,
    `Every try ends with an answer, and all answers together overlook, wrongly name or guess at most ${faultsText(marks.mistakes)}. “Nothing is wrong” without every check is one guess.`,
  ],
  meanTimeAsks(marks.meanTime_s),
];

/** All that a station can ask for, in order. */
export function asksOf(station: Station): Asked[] {
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
    case "inspection":
      return inspectionAsks(station);
  }
}
