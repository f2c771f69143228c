import { judgeClaim } from "../../statistics/claim";
import { conformanceVerdict, probabilityMeanConforms } from "../../statistics/conformance";
import type { Interval } from "../../statistics/interval";
import { clopperPearsonInterval, wilsonInterval } from "../../statistics/proportion";
import { mean, sampleSummary } from "../../statistics/sample";
import { spreadInterval } from "../../statistics/spreadInterval";
import { studentInterval } from "../../statistics/studentInterval";
import { type Evidence, type Judged, lostText, openText, reaches, staysWithin, type Verdict } from "./evidence";
import { judgeFits, judgeInspections, judgeVisits } from "./judgeFits";
import type { CriterionKind } from "./stationAsks";
import { hasFault, isRight, zeroShown } from "./tryResult";

const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
const percents = ({ low, high }: Interval) => `${percent(low)} and ${percent(high)}`;
const graduations = (value: number) => `${(Math.round(value * 100) / 100).toFixed(2)}`;
const NOTHING: Judged = { verdict: "not shown", value: null, says: "not enough to judge by yet", sureness: "" };

/** How sure a count is, and by which method; one try says nothing of a rate. */
type HowSure = Pick<Judged, "sureness" | "method">;
const BY_COUNT: HowSure = { sureness: "" };

/** A plain range of a share first; the other interval is with the methods. */
function shareSureness(successes: number, trials: number, level: number): HowSure {
  if (trials < 2) return BY_COUNT;
  const exact = percents(clopperPearsonInterval(successes, trials, level));
  return {
    sureness: `the true rate lies between ${percents(wilsonInterval(successes, trials, level))}`,
    method: `Wilson, ${percent(level)}; by Clopper-Pearson it lies between ${exact}`,
  };
}

const rightTries = ({ made, station }: Evidence) =>
  station === undefined ? 0 : made.filter((one) => isRight(one, station)).length;

const counted =
  (word: "right" | "clean") =>
  (evidence: Evidence): Judged => {
    const { criterion, open, scheme, made } = evidence;
    const right = rightTries(evidence);
    return {
      verdict: reaches(right, open, criterion.limit),
      value: right,
      says: `${right} of ${criterion.of} ${word}${openText(open)}; at least ${criterion.limit} asked`,
      ...shareSureness(right, made.length, scheme.level),
    };
  };

const VERDICT_OF = { shown: "pass", "ruled out": "fail", "not shown": "not shown" } as const;

const claimShown = (evidence: Evidence): Judged => {
  const { criterion, made, scheme } = evidence;
  if (criterion.claim === undefined || made.length === 0) return NOTHING;
  const right = rightTries(evidence);
  const shown = judgeClaim(right, made.length, criterion.claim);
  return {
    verdict: VERDICT_OF[shown],
    value: right / made.length,
    says: `${right} of ${made.length} right: a rate of ${percent(criterion.claim.rate)} is ${shown} with ${percent(criterion.claim.confidence)} confidence`,
    ...shareSureness(right, made.length, scheme.level),
  };
};

const stops = ({ dialed }: Evidence) =>
  dialed.flatMap(({ stopErrors }) => stopErrors.filter((error) => error !== null));

const MEAN_VERDICT = { accept: "pass", reject: "fail", "not shown yet": "not shown" } as const;

const bias = (evidence: Evidence): Judged => {
  const { criterion, scheme } = evidence;
  const errors = stops(evidence);
  if (errors.length < 2) return NOTHING;
  const sample = sampleSummary(errors);
  const limits = { low: -criterion.limit, high: criterion.limit };
  const probability = probabilityMeanConforms(sample, limits);
  const { low, high } = studentInterval(sample, scheme.level);
  return {
    verdict: MEAN_VERDICT[conformanceVerdict(probability, scheme.risk)],
    value: sample.mean,
    says: `mean ${graduations(sample.mean)} graduations over ${sample.count} stops; at most ${criterion.limit} either way asked`,
    sureness: `the true mean lies between ${graduations(low)} and ${graduations(high)}, and within the limit with a probability of ${percent(probability)}`,
    method: `Student's t, ${percent(scheme.level)}`,
  };
};

const spreadVerdict = ({ low, high }: Interval, limit: number): Verdict => {
  if (high <= limit) return "pass";
  return low > limit ? "fail" : "not shown";
};

const stopSpread = (evidence: Evidence): Judged => {
  const { criterion, scheme } = evidence;
  const errors = stops(evidence);
  if (errors.length < 2) return NOTHING;
  const sample = sampleSummary(errors);
  const { low, high } = spreadInterval(sample, scheme.level);
  return {
    // Each end of the narrower interval is wrong with the scheme's risk.
    verdict: spreadVerdict(spreadInterval(sample, 1 - 2 * scheme.risk), criterion.limit),
    value: sample.standardDeviation,
    says: `spread ${graduations(sample.standardDeviation)} graduations over ${sample.count} stops; at most ${criterion.limit} asked`,
    sureness: `the true spread lies between ${graduations(low)} and ${graduations(high)}`,
    method: `chi-squared, ${percent(scheme.level)}`,
  };
};

const sizeError = ({ criterion, made, scheme }: Evidence): Judged => {
  const errors = made.flatMap((one) => (one.kind === "trouble" && one.sizeError !== null ? [one.sizeError] : []));
  if (errors.length < 2) return NOTHING;
  const sample = sampleSummary(errors.map(Math.abs));
  const probability = probabilityMeanConforms(sample, { low: -Infinity, high: criterion.limit });
  const { low, high } = studentInterval(sample, scheme.level);
  return {
    verdict: MEAN_VERDICT[conformanceVerdict(probability, scheme.risk)],
    value: sample.mean,
    says: `sizes off by ${graduations(sample.mean)} graduations on average over ${sample.count}; at most ${criterion.limit} asked`,
    sureness: `the true mean lies between ${graduations(Math.max(0, low))} and ${graduations(high)}, and within the limit with a probability of ${percent(probability)}`,
    method: `Student's t, ${percent(scheme.level)}`,
  };
};

const faulty = ({ criterion, made, station, open }: Evidence): Judged => {
  const kept = made.filter(({ isBrokenOff }) => !isBrokenOff);
  const lost = made.length - kept.length;
  const count = station === undefined ? 0 : kept.filter((one) => hasFault(one, station)).length;
  return {
    // A lost try is none with a fault. It may have had one, so it leaves the mark open where that matters.
    verdict: staysWithin(count, open + lost, criterion.limit),
    value: count,
    says: `${count} of ${criterion.of} tries with a fault${lostText(lost)}${openText(open)}; at most ${criterion.limit} allowed`,
    sureness: "",
  };
};

const zeros = ({ criterion, zeroed, station, open }: Evidence): Judged => {
  const shown = station === undefined ? [] : zeroed.map((one) => zeroShown(one, station));
  const good = shown.filter((one) => one === "accept").length;
  const unclear = shown.filter((one) => one === "not shown yet").length;
  return {
    verdict: reaches(good, open + unclear, criterion.limit),
    value: good,
    says: `${good} of ${criterion.of} zeros shown to be good${openText(open)}; at least ${criterion.limit} asked`,
    sureness: unclear > 0 ? `${unclear} not shown either way: more stops are needed` : "",
  };
};

const refusals = ({ criterion, zeroed, open }: Evidence): Judged => {
  const count = zeroed.reduce((sum, { refused }) => sum + refused, 0);
  return {
    // One try still open may bring any number of refusals.
    verdict: staysWithin(count, open > 0 ? Infinity : 0, criterion.limit),
    value: count,
    says: `${count} stops refused; at most ${criterion.limit} allowed`,
    sureness: "",
  };
};

const meanTime = ({ criterion, made, open, scheme }: Evidence): Judged => {
  const times = made.filter(({ isBrokenOff }) => !isBrokenOff).map(({ time_ms }) => time_ms / 1000);
  if (times.length === 0) return NOTHING;
  const average = mean(times);
  const ends = times.length < 2 ? undefined : studentInterval(sampleSummary(times), scheme.level);
  const measured: Verdict = average <= criterion.limit ? "pass" : "fail";
  return {
    verdict: open > 0 ? "not shown" : measured,
    value: average,
    says: `${average.toFixed(1)} s a try on average, over ${times.length}; at most ${criterion.limit} s asked`,
    ...(ends === undefined
      ? BY_COUNT
      : {
          sureness: `the true mean lies between ${Math.max(0, ends.low).toFixed(1)} and ${ends.high.toFixed(1)} s`,
          method: `Student's t, ${percent(scheme.level)}`,
        }),
  };
};

const questionsRight = ({ criterion, answers, open, scheme }: Evidence): Judged => {
  const right = answers.filter(Boolean).length;
  return {
    verdict: reaches(right, open, criterion.limit),
    value: right,
    says: `${right} of ${criterion.of} answered right${openText(open)}; at least ${criterion.limit} asked`,
    ...shareSureness(right, answers.length, scheme.level),
  };
};

const JUDGES: Readonly<Record<CriterionKind, (evidence: Evidence) => Judged>> = {
  "first-time": counted("right"),
  claim: claimShown,
  "stop-error-bias": bias,
  "stop-error-spread": stopSpread,
  "faulty-tries": faulty,
  zeroed: zeros,
  refused: refusals,
  right: counted("right"),
  "size-error": sizeError,
  clean: counted("clean"),
  "fit-faults": judgeFits,
  "visit-faults": judgeVisits,
  mistakes: judgeInspections,
  "mean-time": meanTime,
  questions: questionsRight,
};

/** Judges one criterion by the rule of its kind. */
export function judgeCriterion(evidence: Evidence): Judged {
  return JUDGES[evidence.criterion.kind](evidence);
}
