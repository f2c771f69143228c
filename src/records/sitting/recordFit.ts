import { canonicalJson } from "../../drill/canonicalJson";
import { DrillError } from "../../drill/drillError";
import type { TryResult } from "../../drill/marking/tryResult";
import { type PlannedTry, planTries } from "../../drill/sheet/planTries";
import type { AskedQuestion } from "../../drill/sitting/drawQuestions";
import { sittingPlan } from "../../drill/sitting/sittingPlan";
import { sittingQuestions } from "../../drill/sitting/sittingQuestions";
import { seededChance } from "../../statistics/chance";
import { type Finding, failing, type Problem } from "../../wording/problem";
import { checkProblem, tryProblem } from "./checkWords";
import type { RecordedAnswer, SittingFacts } from "./sittingRecord";

/** What a check of one part finds: the first thing that does not fit, or undefined. */
type Misfit = Problem | undefined;

/** What a part comes to when it is made again from sheet and seed, or that it cannot be. */
function madeAgain<Part>(
  code: "plan-not-made" | "questions-not-made",
  make: () => Part,
  check: (part: Part) => Misfit,
): Misfit {
  try {
    return check(make());
  } catch (error) {
    if (error instanceof DrillError) return checkProblem(code, [], { why: error.message });
    throw error;
  }
}

/** What keeps pauses, reloads, seed and end of a sitting from being such as its sheet allows. */
export function rulesMisfit({ sheet, seed, pauses, interruptions, tries, ended }: SittingFacts): Misfit {
  const { pauseAllowed, onReload, timeLimit_ms } = sittingPlan(sheet);
  const lost = tries.filter(({ isBrokenOff }) => isBrokenOff).length;
  const findings: readonly Finding[] = [
    [sheet.seed === undefined || sheet.seed === seed, checkProblem("other-seed", [], { seed, set: sheet.seed })],
    [pauseAllowed || pauses === 0, checkProblem("pauses-not-allowed", [], { pauses })],
    [onReload === "resume" || interruptions === 0, checkProblem("reload-not-allowed", [])],
    [lost <= interruptions, checkProblem("lost-without-reload", [], { lost, reloads: interruptions })],
    [ended !== "time" || timeLimit_ms !== null, checkProblem("no-time-set", [])],
  ];
  return failing(findings)[0];
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
    "plan-not-made",
    () => planTries(sheet, seededChance(seed)),
    (plan) => {
      if (tries.length > plan.length)
        return checkProblem("too-many-tries", [], { planned: plan.length, tries: tries.length });
      if (ended === "finished" && tries.length < plan.length)
        return checkProblem("tries-missing", [], { planned: plan.length, tries: tries.length });
      const astray = tries.findIndex((one, k) => {
        const planned = plan[k];
        return planned === undefined || !isAsPlanned(one, planned, facts);
      });
      return astray < 0 ? undefined : tryProblem(astray + 1, checkProblem("not-planned", []));
    },
  );
}

function answerMisfit({ questionId, choice, isRight }: RecordedAnswer, asked: AskedQuestion | undefined): Misfit {
  if (asked?.question.id !== questionId) return checkProblem("other-question", [], { question: questionId });
  const { choices, answer } = asked.question;
  if (choices[choice] === undefined) return checkProblem("no-such-choice", [], { choice });
  if (isRight === (choice === answer)) return undefined;
  const [recorded, marked] = isRight ? ["right", "wrong"] : ["wrong", "right"];
  return checkProblem("marked-otherwise", [], { recorded, marked });
}

/** What keeps the answers of a sitting from being to the questions that it asked, and as right as the bank has them. */
export function answersMisfit({ sheet, seed, tries, answers, ended }: SittingFacts): Misfit {
  return madeAgain(
    "questions-not-made",
    () => sittingQuestions(sheet, seed),
    (questions) => {
      if (answers.length > questions.length)
        return checkProblem("too-many-answers", [], { planned: questions.length, answers: answers.length });
      if (ended === "finished" && answers.length < questions.length)
        return checkProblem("answers-missing", [], { planned: questions.length, answers: answers.length });
      if (answers.length > 0 && tries.length < sittingPlan(sheet).tries) return checkProblem("early-answers", []);
      const [wrong] = answers.flatMap((one, k) => {
        const misfit = answerMisfit(one, questions[k]);
        return misfit === undefined ? [] : [checkProblem("answer-misfit", [], { place: k + 1, misfit })];
      });
      return wrong;
    },
  );
}
