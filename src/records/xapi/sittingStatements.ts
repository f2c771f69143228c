import { SHIPPED_QUESTIONS } from "../../drill/questions/shippedQuestions";
import { sheetSha256 } from "../../drill/sheet/sheetFingerprint";
import type { SittingRecord } from "../records";
import { checkedSitting } from "../sitting/checkedSitting";
import { readSittingRecord } from "../sitting/readSittingRecord";
import type { SittingRecord as DrillRecord, RecordedAnswer } from "../sitting/sittingRecord";
import type { Outcome } from "../sitting/sittingShown";
import {
  type Activity,
  activity,
  duration,
  extension,
  inEnglish,
  pathPart,
  type Result,
  statementId,
  TYPES,
  VERBS,
} from "./statement";
import type { OwnParts } from "./tryStatements";

/** A sitting whose record was checked. */
export interface StatedSitting {
  readonly sitting: SittingRecord;
  readonly record: DrillRecord;
  readonly outcome: Outcome;
  /** The sheet as an activity: one for all sittings of what counts the same, however it is titled. */
  readonly sheet: Activity;
}

/**
 * A sitting as its checked record tells it; null for one that is under way, and for a record that cannot be read or does
 * not check: of those nothing is stated.
 *
 * @param appVersion - the version that checks
 */
export function statedSitting(sitting: SittingRecord, appVersion: string): StatedSitting | null {
  const checked = checkedSitting(sitting, { appVersion });
  if (checked.kind !== "ended" || checked.shown.outcome === null) return null;
  const { record } = readSittingRecord(sitting.body);
  const { outcome, title } = checked.shown;
  const sheet = activity(`sheets/${sheetSha256(record.sheet)}`, TYPES.assessment, title || "Sitting");
  return { sitting, record, outcome, sheet };
}

const SITTING_VERBS = {
  passed: VERBS.passed,
  failed: VERBS.failed,
  "not shown yet": VERBS.completed,
  "broken-off": VERBS.terminated,
} as const;

/** Marks that were reached, of all that the sheet has; none where it has none. */
function scoreOf({ marking: { marks } }: DrillRecord): Pick<Result, "score"> {
  const max = marks.length;
  if (max === 0) return {};
  const raw = marks.filter(({ verdict }) => verdict === "pass").length;
  return { score: { scaled: Number((raw / max).toFixed(4)), raw, min: 0, max } };
}

/** The sitting itself. */
export function sittingParts({ sitting, record, outcome, sheet }: StatedSitting): OwnParts {
  const isDecided = outcome === "passed" || outcome === "failed";
  return {
    id: statementId("sitting", sitting.id),
    personId: sitting.personId,
    sittingId: sitting.id,
    at: Date.parse(record.startedAt) + record.worked_ms,
    verb: SITTING_VERBS[outcome],
    object: sheet,
    result: {
      ...scoreOf(record),
      ...(isDecided && { success: outcome === "passed" }),
      completion: outcome !== "broken-off",
      duration: duration(record.worked_ms),
      extensions: {
        [extension("reloads")]: record.interruptions,
        [extension("pauses")]: record.pauses,
        [extension("practice")]: record.seedFrom === "address",
      },
    },
  };
}

const choiceId = (index: number) => `choice-${index + 1}`;

/** A question as an interaction; of one that the bank no longer has, only its id is known. */
function questionActivity(questionId: string): Activity {
  const path = `questions/${pathPart(questionId)}`;
  const plain = activity(path, TYPES.interaction, questionId);
  const question = SHIPPED_QUESTIONS.find(({ id }) => id === questionId);
  const interaction = { ...plain.definition, interactionType: "choice" as const };
  if (question === undefined) return { ...plain, definition: interaction };
  return {
    ...plain,
    definition: {
      ...interaction,
      description: inEnglish(question.asks),
      correctResponsesPattern: [choiceId(question.answer)],
      choices: question.choices.map((choice, i) => ({ id: choiceId(i), description: inEnglish(choice) })),
    },
  };
}

const answerParts = ({ sitting, record }: StatedSitting, answer: RecordedAnswer, index: number): OwnParts => ({
  id: statementId("answer", `${sitting.id}:${index + 1}`),
  personId: sitting.personId,
  sittingId: sitting.id,
  at: Date.parse(record.startedAt) + record.worked_ms,
  verb: VERBS.answered,
  object: questionActivity(answer.questionId),
  result: { success: answer.isRight, completion: true, response: choiceId(answer.choice) },
});

/** Every answer of a sitting. */
export const answersParts = (stated: StatedSitting): OwnParts[] =>
  stated.record.answers.map((answer, index) => answerParts(stated, answer, index));
