import { type FormEvent, useState } from "react";
import { faceText } from "../../../dialing/words";
import { type Combination, parseCombination } from "../../../lock/combination";
import { faceNumber } from "../../../lock/dial";
import { LockError } from "../../../lock/lockError";
import type { HandoverSession } from "./handoverSession";

/** Reads numbers as the face shows them. @throws {LockError} */
function readNumbers(text: string, { setup: { profile } }: HandoverSession): Combination {
  const { graduations, numbersIncrease } = profile;
  const numbers = text
    .split(/[^\d.]+/)
    .filter((part) => part !== "")
    .map(Number);
  return parseCombination(profile, numbers).map((number) => faceNumber(number, graduations, numbersIncrease));
}

interface ChooseNumbersProps {
  readonly session: HandoverSession;
  readonly onDone: () => void;
}

/** Which numbers the lock is to be set to: drawn by the rules, or the trainee's own with the rules they break. */
export function ChooseNumbers({ session, onDone }: ChooseNumbersProps) {
  const { profile } = session.setup;
  const [text, setText] = useState(() =>
    session
      .drawOwn()
      .map((one) => faceText(one, profile))
      .join("-"),
  );
  const [problem, setProblem] = useState<readonly string[]>([]);
  const [isWarned, setIsWarned] = useState(false);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    try {
      const numbers = readNumbers(text, session);
      const broken = session.broken(numbers);
      setProblem(broken);
      if (broken.length > 0 && !isWarned) {
        setIsWarned(true);
        return;
      }
      session.changeTo(numbers, performance.now());
      onDone();
    } catch (error) {
      if (!(error instanceof LockError)) throw error;
      setProblem([error.message]);
    }
  };
  return (
    <form className="run-form" onSubmit={submit}>
      <label>
        New combination
        <input
          className="field"
          value={text}
          inputMode="numeric"
          autoComplete="off"
          onChange={(event) => {
            setText(event.currentTarget.value);
            setIsWarned(false);
            setProblem([]);
          }}
        />
      </label>
      {problem.length > 0 && (
        <ul className="run-problems" role="alert">
          {problem.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      )}
      <button type="submit" className="button primary">
        {isWarned ? "Set it all the same" : "Set it"}
      </button>
    </form>
  );
}

/** Key and button of a change by hand, and what they have come to. */
export function ChangeControls({ session }: { readonly session: HandoverSession }) {
  const { change } = session;
  const [, redraw] = useState(0);
  if (change === null) return null;
  const use = (what: Parameters<typeof change.use>[0]) => () => {
    change.use(what);
    redraw((count) => count + 1);
  };
  const wanted = change.wanted.map((number) => faceText(number, session.setup.profile)).join("-");
  return (
    <section className="panel run-change" aria-label="Change by hand">
      <h2>
        Change to {wanted} <small>door open</small>
      </h2>
      {change.key === null ? (
        <>
          <p>Open it with the present numbers, press the button inside the door, and dial the new ones twice.</p>
          <button type="button" className="button" onClick={use("pressButton")}>
            Press the change button
          </button>
        </>
      ) : (
        <>
          <p>
            Dial the present numbers to the changing index, the hollow mark, without the draw. Put the key in, turn it;
            dial the new numbers to the same mark; turn it back, take the key out.
          </p>
          <div className="run-buttons">
            <button type="button" className="button" onClick={use("insertKey")}>
              Put the key in
            </button>
            <button type="button" className="button" onClick={use("turnKey")}>
              Turn the key
            </button>
            <button type="button" className="button" onClick={use("turnKeyBack")}>
              Turn it back
            </button>
            <button type="button" className="button" onClick={use("withdrawKey")}>
              Take the key out
            </button>
          </div>
        </>
      )}
      <p role="status" className="run-change-words">
        {change.words}
      </p>
      <button
        type="button"
        className="button"
        disabled={!change.canBeLeft}
        onClick={() => session.leaveChange(performance.now())}
      >
        {change.isDone ? "Done" : "Leave the change"}
      </button>
    </section>
  );
}
