import type { Question } from "../../drill/questions/question";
import { type AnswerGiven, difficultyText, questionDifficulty } from "../../drill/questions/questionDifficulty";
import type { RecordedAnswer } from "../../drill/sittingRecord";
import type { SittingSession } from "./sittingSession";
import type { SittingShelf } from "./sittingShelf";

interface ReviewedProps {
  readonly question: Question;
  readonly answer: RecordedAnswer | undefined;
  readonly given: readonly AnswerGiven[];
}

const answerText = ({ choices }: Question, answer: RecordedAnswer | undefined) => {
  if (answer === undefined) return "Not answered.";
  const choice = choices[answer.choice] ?? "";
  return answer.isRight ? `Right: ${choice}` : `Not right: ${choice}`;
};

function Reviewed({ question, answer, given }: ReviewedProps) {
  return (
    <li>
      <p className="sitting-asks">{question.asks}</p>
      <p>{answerText(question, answer)}</p>
      {answer?.isRight !== true && <p>It is: {question.choices[question.answer]}</p>}
      <p>{question.explanation}</p>
      <p className="sitting-soft">
        Source: {question.source}. In this browser: {difficultyText(questionDifficulty(question.id, given))}.
      </p>
    </li>
  );
}

interface QuestionReviewProps {
  readonly session: SittingSession;
  readonly shelf: SittingShelf;
}

/** Every question asked, with the answer, why, from where, and how hard it has proved here. */
export function QuestionReview({ session, shelf }: QuestionReviewProps) {
  const { questions, answers } = session;
  const given = shelf.answers;
  if (questions.length === 0 || answers.length === 0) return null;
  return (
    <section aria-label="Questions">
      <h2>Questions</h2>
      <ol className="sitting-review">
        {questions.slice(0, answers.length).map(({ question }, k) => (
          <Reviewed key={question.id} question={question} answer={answers[k]} given={given} />
        ))}
      </ol>
    </section>
  );
}
