import { useSelector } from "@xstate/react";
import { type FormEvent, useEffect, useRef, useState } from "react";
import type { AskedQuestion } from "../../../drill/sitting/drawQuestions";
import { Button } from "../../parts/controls/Button";
import { memoryOf } from "../../parts/page/ofChart";
import type { SittingSession } from "../session/sittingSession";
import { pageTime } from "../session/steadyTime";
import { BreakOff } from "./BreakOff";
import { SittingClock } from "./SittingClock";
import { SittingHead } from "./SittingHead";

interface QuestionFormProps {
  readonly asked: AskedQuestion;
  readonly onAnswer: (shown: number) => void;
}

function QuestionForm({ asked, onAnswer }: QuestionFormProps) {
  const [shown, setShown] = useState<number | null>(null);
  const first = useRef<HTMLFieldSetElement>(null);
  useEffect(() => first.current?.focus(), []);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (shown !== null) onAnswer(shown);
  };
  return (
    <form onSubmit={submit}>
      <fieldset className="stack mb-4 outline-none" ref={first} tabIndex={-1}>
        <legend className="mb-4 text-title">{asked.question.asks}</legend>
        {asked.order.map((choice, place) => (
          <label
            key={choice}
            className="plate flex items-baseline gap-4 p-4 cursor-pointer has-checked:barred has-checked:border-ink"
          >
            <input type="radio" name="choice" checked={shown === place} onChange={() => setShown(place)} />
            <span>{asked.question.choices[choice]}</span>
          </label>
        ))}
      </fieldset>
      <button type="submit" className="button primary" disabled={shown === null}>
        Answer
      </button>
    </form>
  );
}

/** One question after another; which answers were right is shown at the end. */
export function QuestionView({ session }: { readonly session: SittingSession }) {
  const { answersGiven } = useSelector(session.chart, memoryOf);
  const { questions, plan } = session;
  const question = questions[answersGiven];
  if (question === undefined) return null;
  return (
    <div className="sitting-page page gap-6 max-w-[920px] pt-6">
      <h2 className="mb-3">
        {session.sheet.title}{" "}
        <small>
          question {answersGiven + 1} of {questions.length}
        </small>
      </h2>
      <SittingHead session={session} />
      <SittingClock session={session} />
      <QuestionForm
        key={question.question.id}
        asked={question}
        onAnswer={(shown) => session.answer(shown, pageTime.now())}
      />
      <div className="row">
        {plan.pauseAllowed && <Button onClick={() => session.pause(pageTime.now())}>Pause</Button>}
        <BreakOff session={session} />
      </div>
    </div>
  );
}
