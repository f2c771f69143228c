import { type ReactNode, useState } from "react";
import type { HandoverSession } from "./handoverSession";
import { RunCautions } from "./RunCautions";
import { ACT_GROUPS, type ActGroup } from "./runActs";

const PAPER: ActGroup = { title: "Paper", acts: [], cautions: ["record"] };
const GROUPS = [...ACT_GROUPS, PAPER];

interface ActsProps {
  readonly session: HandoverSession;
  readonly onForm: (form: "numbers" | "record") => void;
  /** Looks back on the run; null where there is this one try, and nothing is told of it. */
  readonly onLookBack: (() => void) | null;
}

interface ActButtonProps {
  readonly onAct: () => void;
  readonly children: ReactNode;
}

function ActButton({ onAct, children }: ActButtonProps) {
  return (
    <button type="button" className="button" onClick={onAct}>
      {children}
    </button>
  );
}

function PaperActs({ session, onForm, onLookBack }: ActsProps) {
  const sign = () => {
    if (session.act({ type: "duty.signed" }, performance.now()) && session.run.isHandedOver) onLookBack?.();
  };
  return (
    <>
      <ActButton onAct={() => onForm("record")}>Write the record</ActButton>
      <ActButton onAct={sign}>Sign the door off</ActButton>
      {onLookBack !== null && <ActButton onAct={onLookBack}>Look back</ActButton>}
    </>
  );
}

interface GroupChoiceProps {
  readonly chosen: string;
  readonly onChoose: (title: string) => void;
}

/** Which group of acts is shown, where there is room for one only. */
function GroupChoice({ chosen, onChoose }: GroupChoiceProps) {
  return (
    <fieldset className="run-groups">
      <legend className="visually-hidden">What you do next</legend>
      {GROUPS.map(({ title }) => (
        <button
          key={title}
          type="button"
          className="button"
          aria-pressed={title === chosen}
          onClick={() => onChoose(title)}
        >
          {title}
        </button>
      ))}
    </fieldset>
  );
}

/** Everything one may do next, at any time. */
export function Acts(props: ActsProps) {
  const { session, onForm } = props;
  const [chosen, setChosen] = useState<string>(GROUPS[0]?.title ?? "");
  return (
    <div className="run-acts">
      <GroupChoice chosen={chosen} onChoose={setChosen} />
      {GROUPS.map(({ title, acts, cautions }) => (
        <fieldset key={title} className="run-group" data-chosen={title === chosen}>
          <legend>{title}</legend>
          {acts
            .filter(({ isOffered }) => isOffered?.(session) ?? true)
            .map(({ label, does }) => (
              <ActButton key={label} onAct={() => does(session, performance.now())}>
                {label}
              </ActButton>
            ))}
          {title === "Lock" && <ActButton onAct={() => onForm("numbers")}>Change the combination</ActButton>}
          {title === "Paper" && <PaperActs {...props} />}
          <RunCautions ids={cautions} />
        </fieldset>
      ))}
    </div>
  );
}
