import { type FormEvent, useState } from "react";
import { combinationText } from "../../../../handover/change/changeFault";
import { PackChange } from "../../../../handover/change/packChange";
import { faceNumbers, readOwn } from "../../../hand/readOwn";
import { Button } from "../../../parts/controls/Button";
import { Lines } from "../../../parts/Lines";
import { KeyActs, WITH_BUTTON, WITH_KEY } from "../change/KeyActs";
import { brokenRules, changeTo, leaveChange } from "./session/changeWork";
import type { HandoverSession } from "./session/handoverSession";

interface ChooseNumbersProps {
  readonly session: HandoverSession;
  readonly onDone: () => void;
}

/** Which numbers the lock is to be set to: drawn by the rules, or the trainee's own with the rules they break. */
export function ChooseNumbers({ session, onDone }: ChooseNumbersProps) {
  const { profile } = session.setup;
  const [text, setText] = useState(() => faceNumbers(session.drawOwn(), profile).join("-"));
  const [problem, setProblem] = useState<readonly string[]>([]);
  const [isWarned, setIsWarned] = useState(false);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const own = readOwn(profile, (text.match(/[\d.]+/g) ?? []).map(Number));
    if ("problem" in own) {
      setProblem([own.problem]);
      return;
    }
    const broken = brokenRules(profile, own.numbers);
    setProblem(broken);
    if (broken.length > 0 && !isWarned) {
      setIsWarned(true);
      return;
    }
    changeTo(session, own.numbers, performance.now());
    onDone();
  };
  return (
    <form className="grid gap-4" onSubmit={submit}>
      <label className="grid gap-1">
        New combination
        <input
          className="field"
          value={text}
          autoComplete="off"
          onChange={(event) => {
            setText(event.currentTarget.value);
            setIsWarned(false);
            setProblem([]);
          }}
        />
      </label>
      {problem.length > 0 && <Lines className="notice pl-6" role="alert" of={problem} />}
      <Button type="submit" className="primary justify-self-start">
        {isWarned ? "Set it anyway" : "Set it"}
      </Button>
    </form>
  );
}

const ORDER = {
  key: "Dial the current numbers to the changing index (the hollow mark), without the draw. Insert the key and turn it. Dial the new numbers to the same mark. Turn the key back and remove it.",
  button: "Open the lock with the current numbers, press the button inside the door, and dial the new numbers twice.",
} as const;

interface ChangeControlsProps {
  readonly session: HandoverSession;
  readonly isOnce: boolean;
}

/** Key and button of a change by hand, and what they have come to. */
export function ChangeControls({ session, isOnce }: ChangeControlsProps) {
  const { change } = session;
  if (change === null) return null;
  const isKeyed = change.change instanceof PackChange;
  return (
    <>
      <h2>
        Change to {combinationText(change.wanted, session.setup.profile)} <small>door open</small>
      </h2>
      <KeyActs
        change={change.change}
        legend={isKeyed ? "Change key" : "Change button"}
        choices={isKeyed ? WITH_KEY : WITH_BUTTON}
        said={change.words(isOnce)}
        isOnce={isOnce}
        onAct={(act) => session.workOnChange(() => change.use(act))}
        onVain={(why) => session.workOnChange(() => change.refuse(why))}
      />
      <p className="text-small text-soft">{ORDER[isKeyed ? "key" : "button"]}</p>
      <Button disabled={!change.canBeLeft} onClick={() => leaveChange(session, performance.now())}>
        {change.isDone ? "Done" : "Leave the change"}
      </Button>
    </>
  );
}
