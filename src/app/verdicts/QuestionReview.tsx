import { type Question, surenessText } from "../../drill/questions/question";
import { type AnswerGiven, difficultyText, questionDifficulty } from "../../drill/questions/questionDifficulty";
import { SHIPPED_QUESTIONS } from "../../drill/questions/shippedQuestions";
import type { RecordedAnswer } from "../../records/sitting/sittingRecord";
import { countText } from "../../wording/amountWords";

interface ReviewedProps {
  readonly question: Question;
  readonly answer: RecordedAnswer;
  readonly given: readonly AnswerGiven[] | null;
}

const answerText = ({ choices }: Question, answer: RecordedAnswer) => {
  const choice = choices[answer.choice] ?? "";
  return answer.isRight ? `Right: ${choice}` : `Not right: ${choice}`;
};

function Reviewed({ question, answer, given }: ReviewedProps) {
  return (
    <li>
      <p className="font-semibold">{question.asks}</p>
      <p>{answerText(question, answer)}</p>
      {answer.isRight !== true && <p>It is: {question.choices[question.answer]}</p>}
      <p>{question.explanation}</p>
      <p className="text-soft">
        Source: {question.source}. {surenessText(question)}
        {given !== null && ` In this browser: ${difficultyText(questionDifficulty(question.id, given))}.`}
      </p>
    </li>
  );
}

interface QuestionReviewProps {
  readonly answers: readonly RecordedAnswer[];
  /** Answers given in this browser; null where they say nothing of whoever is shown. */
  readonly given: readonly AnswerGiven[] | null;
}

/** Every question answered, with why, from where, and how hard it has proved here. */
export function QuestionReview({ answers, given }: QuestionReviewProps) {
  const reviewed = answers.flatMap((answer) => {
    // A record may come from a version with other questions.
    const question = SHIPPED_QUESTIONS.find(({ id }) => id === answer.questionId);
    return question === undefined ? [] : [{ question, answer }];
  });
  if (answers.length === 0) return null;
  const others = answers.length - reviewed.length;
  return (
    <section aria-label="Questions">
      <h2 className="mb-3">Questions</h2>
      <ol className="plain">
        {reviewed.map(({ question, answer }) => (
          <Reviewed key={question.id} question={question} answer={answer} given={given} />
        ))}
      </ol>
      {others > 0 && (
        <p>
          {countText(others, "question is", "questions are")} from another version of the app and cannot be shown here.
        </p>
      )}
    </section>
  );
}
