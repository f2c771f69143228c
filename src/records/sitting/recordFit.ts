import { canonicalJson } from "../../drill/canonicalJson";
import { DrillError } from "../../drill/drillError";
import type { TryResult } from "../../drill/marking/tryResult";
import type { AskedQuestion } from "../../drill/questions/drawQuestions";
import { sittingQuestions } from "../../drill/questions/sittingQuestions";
import { type PlannedTry, planTries } from "../../drill/sheet/planTries";
import { sittingPlan } from "../../drill/sittingPlan";
import { seededChance } from "../../statistics/chance";
import type { RecordedAnswer, SittingFacts } from "./sittingRecord";

/** What a check of one part finds: a sentence for the first thing that does not fit, or undefined. */
type Misfit = string | undefined;

/** A part that cannot be made again from sheet and seed, in a sentence. */
function madeAgain<Part>(what: string, make: () => Part, check: (part: Part) => Misfit): Misfit {
  try {
    return check(make());
  } catch (error) {
    if (error instanceof DrillError) return `The ${what} cannot be made again from the sheet: ${error.message}.`;
    throw error;
  }
}

/** What keeps pauses, reloads, seed and end of a sitting from being such as its sheet allows. */
export function rulesMisfit({ sheet, seed, pauses, interruptions, tries, ended }: SittingFacts): Misfit {
  const { pauseAllowed, onReload, timeLimit_ms } = sittingPlan(sheet);
  const lost = tries.filter(({ isBrokenOff }) => isBrokenOff).length;
  const findings: readonly (readonly [boolean, string])[] = [
    [sheet.seed === undefined || sheet.seed === seed, `The seed is ${seed}, and the sheet sets ${sheet.seed}.`],
    [pauseAllowed || pauses === 0, `There are pauses (${pauses}) on record, and the sheet allows none.`],
    [onReload === "resume" || interruptions === 0, "It went on after a reload, and the sheet breaks it off there."],
    [lost <= interruptions, `Tries lost to a reload: ${lost}; reloads on record: ${interruptions}.`],
    [ended !== "time" || timeLimit_ms !== null, "It ended because time was up, and the sheet sets no time."],
  ];
  return findings.find(([isFine]) => !isFine)?.[1];
}

/** A try's place and what it was about, as the plan has it. */
function isAsPlanned(one: TryResult, planned: PlannedTry, { sheet }: SittingFacts): boolean {
  const isThere = one.station === planned.station && one.repetition === planned.repetition;
  if (!isThere || one.kind !== sheet.stations[planned.station]?.kind) return false;
  return !("combination" in one) || canonicalJson(one.combination) === canonicalJson(planned.combination ?? []);
}

/** What keeps the tries of a sitting from being those that sheet and seed lead to, in their order. */
export function planMisfit(facts: SittingFacts): Misfit {
  const { sheet, seed, tries, ended } = facts;
  return madeAgain(
    "plan of the tries",
    () => planTries(sheet, seededChance(seed)),
    (plan) => {
      if (tries.length > plan.length) return `The sheet has ${plan.length} tries, and ${tries.length} are on record.`;
      if (ended === "finished" && tries.length < plan.length)
        return `It is recorded as finished with ${tries.length} of ${plan.length} tries.`;
      const astray = tries.findIndex((one, k) => {
        const planned = plan[k];
        return planned === undefined || !isAsPlanned(one, planned, facts);
      });
      return astray < 0
        ? undefined
        : `Try ${astray + 1} is not the one that sheet and seed lead to: station, repetition, kind or combination differ.`;
    },
  );
}

function answerMisfit({ questionId, choice, isRight }: RecordedAnswer, asked: AskedQuestion | undefined): Misfit {
  if (asked?.question.id !== questionId) return `is to question "${questionId}", which sheet and seed do not lead to`;
  const { choices, answer } = asked.question;
  if (choices[choice] === undefined) return `takes choice ${choice}, which the question does not have`;
  return isRight === (choice === answer)
    ? undefined
    : `is recorded as ${isRight ? "right" : "wrong"}, and the bank has it ${isRight ? "wrong" : "right"}`;
}

/** What keeps the answers of a sitting from being to the questions that it asked, and as right as the bank has them. */
export function answersMisfit({ sheet, seed, tries, answers, ended }: SittingFacts): Misfit {
  return madeAgain(
    "choice of the questions",
    () => sittingQuestions(sheet, seed),
    (questions) => {
      if (answers.length > questions.length)
        return `The sheet asks ${questions.length} questions, and ${answers.length} answers are on record.`;
      if (ended === "finished" && answers.length < questions.length)
        return `It is recorded as finished with ${answers.length} of ${questions.length} answers.`;
      if (answers.length > 0 && tries.length < sittingPlan(sheet).tries)
        return "There are answers on record, and questions come only after the last try.";
      const misfits = answers.map((one, k) => answerMisfit(one, questions[k]));
      const wrong = misfits.findIndex((one) => one !== undefined);
      return wrong < 0 ? undefined : `Answer ${wrong + 1} ${misfits[wrong]}.`;
    },
  );
}
