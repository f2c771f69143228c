import { type MasteryRule, READY_SCORE } from "../records/masteryRule";
import { agreeing, countText } from "../wording/amountWords";
import { luckyShare } from "./masteryCharacteristic";
import { type Standing, stepsOf } from "./readiness";

/** "1 in 10", "3 in 10", "15 in 100": a rate as one counts. @param rate - in (0, 1) */
export function rateWords(rate: number): string {
  const inTen = Math.round(rate * 10);
  if (Math.abs(rate * 10 - inTen) < 1e-6) return `${inTen} in 10`;
  return `${Number((rate * 100).toFixed(1))} in 100`;
}

/** Words for attempts at the dial and for jobs. */
const WORDS = {
  attempt: { one: "attempt", many: "attempts", right: "opening", rights: "openings" },
  job: { one: "job", many: "jobs", right: "right job", rights: "right jobs" },
} as const;

type Words = (typeof WORDS)[keyof typeof WORDS];

interface Told extends Standing {
  readonly rule: MasteryRule;
  readonly attempts: number;
  readonly wanted: number;
  readonly isJob: boolean;
}

const inARow = (wanted: number, { right, rights }: Words) =>
  wanted === 1 ? `1 more ${right}` : `${countText(wanted, right, rights)} in a row`;

/** Right ones that a miss costs at most. */
const cost = (rule: MasteryRule) => Math.ceil(-stepsOf(rule).failure / stepsOf(rule).success);

const TIMES = Math.floor(Math.exp(READY_SCORE));

/** What the rule shows, and how often it errs. */
function readyMessage({ rule, shownAt = 1 }: Told, { one, many }: Words): string {
  const [good, bad] = [rateWords(rule.adequateFailureRate), rateWords(rule.inadequateFailureRate)];
  const lucky = Math.round(100 * luckyShare(rule, shownAt));
  const luck = lucky === 0 ? "fewer than 1 of 100" : `about ${lucky} of 100`;
  return `Ready since ${one} ${shownAt}. The latest stretch of ${many} up to there is at least ${TIMES} times as likely from someone who misses ${good} as from someone who misses ${bad}. Luck can do that too: ${luck} people who miss ${bad} get there within ${shownAt} ${many}.`;
}

function lapsedMessage({ lapse, wanted }: Told, words: Words): string {
  const why =
    lapse?.by === "time"
      ? `no practice for ${lapse.days} days`
      : `too many misses since it was shown, the last at ${words.one} ${lapse?.at}`;
  return `No longer ready: ${why}. ${inARow(wanted, words)} ${agreeing(wanted, "makes", "make")} you ready again.`;
}

function notYetMessage({ attempts, wanted, rule }: Told, words: Words): string {
  if (attempts === 0)
    return `No ${words.one} yet. ${inARow(wanted, words)} ${agreeing(wanted, "makes", "make")} you ready.`;
  const missed = cost(rule);
  return `Not ready yet: ${inARow(wanted, words)} would make you ready. A miss sets you back by up to ${countText(missed, words.right, words.rights)}.`;
}

/** How far someone is, in two sentences or three. */
export function masteryMessage(told: Told): string {
  const words = WORDS[told.isJob ? "job" : "attempt"];
  if (told.state === "ready") return readyMessage(told, words);
  return told.state === "lapsed" ? lapsedMessage(told, words) : notYetMessage(told, words);
}

/** What a rule asks, in a sentence or two. */
export function ruleSentence({
  adequateFailureRate: p0,
  inadequateFailureRate: p1,
  minimumAttempts: least,
  lapseDays,
}: MasteryRule): string {
  const lapse = lapseDays === null ? "" : ` or after ${lapseDays} days without practice`;
  return `Ready means: after at least ${least} attempts, the results fit someone who misses ${rateWords(p0)} much better than someone who misses ${rateWords(p1)}. Readiness is lost after several misses close together${lapse}.`;
}
