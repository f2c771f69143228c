import { useState } from "react";
import { type ActGroupTitle, nextStep } from "../../../../handover/run/nextStep";
import { Button } from "../../../parts/controls/Button";
import { RunCautions } from "./RunCautions";
import type { HandoverSession } from "./session/handoverSession";
import { ACT_GROUPS, type ActGroup } from "./session/runActs";

const PAPER: ActGroup = { title: "Paper", acts: [], cautions: ["record"] };
/** The groups of a run: nothing is fitted where the lock came on its door. */
const groupsOf = ({ tray }: HandoverSession) =>
  [...ACT_GROUPS, PAPER].filter(({ title }) => tray !== null || title !== "Fit");

/** Where the work of a run begins. */
const firstOf = ({ tray }: HandoverSession): ActGroupTitle => (tray === null ? "Prepare" : "Fit");

interface ActsProps {
  readonly session: HandoverSession;
  readonly onForm: (form: "numbers" | "record") => void;
  /** Looks back on the run; null where there is this one try, and nothing is told of it. */
  readonly onLookBack: (() => void) | null;
}

function PaperActs({ session, onForm, onLookBack }: ActsProps) {
  const sign = () => {
    if (session.act({ type: "duty.signed" }, performance.now()) && session.run.isHandedOver) onLookBack?.();
  };
  return (
    <>
      <Button onClick={() => onForm("record")}>Write the record</Button>
      <Button onClick={sign}>Sign the door off</Button>
      {onLookBack !== null && <Button onClick={onLookBack}>Look back</Button>}
    </>
  );
}

/** Whether the lock is being put together: its parts are on the screen. */
export const isFitting = ({ tray, run }: HandoverSession) => tray !== null && run.situation.fit === "apart";

/** The next step of the duty; nothing once it is done. */
export function NextLine({ session }: Pick<ActsProps, "session">) {
  const { run } = session;
  if (run.isHandedOver) return null;
  return (
    <p className="run-next text-lead" data-testid="run-next">
      <b>Next:</b> {nextStep(run.situation).say}
    </p>
  );
}

interface GroupChoiceProps {
  readonly groups: readonly ActGroup[];
  readonly chosen: ActGroupTitle;
  /** Where the next step is done; null where there is this one try, and nothing is told of it. */
  readonly next: ActGroupTitle | null;
  readonly onChoose: (title: ActGroupTitle) => void;
}

/** Which group of acts is shown. */
function GroupChoice({ groups, chosen, next, onChoose }: GroupChoiceProps) {
  return (
    <fieldset className="run-groups row">
      <legend className="visually-hidden">Groups of acts</legend>
      {groups.map(({ title }) => (
        <Button
          key={title}
          aria-pressed={title === chosen}
          aria-current={title === next ? "step" : undefined}
          onClick={() => onChoose(title)}
        >
          {title}
        </Button>
      ))}
    </fieldset>
  );
}

/** What one may do, a group at a time: the group of the next step, or another that was chosen since. */
export function Acts(props: ActsProps) {
  const { session, onForm, onLookBack } = props;
  const isOnce = onLookBack === null;
  const next = nextStep(session.run.situation);
  const [choice, setChoice] = useState<{ readonly title: ActGroupTitle; readonly at: string } | null>(null);
  const isChosen = choice !== null && (isOnce || choice.at === next.say);
  const unchosen = isOnce ? firstOf(session) : next.group;
  const shown = isChosen ? choice.title : unchosen;
  const groups = groupsOf(session);
  const group = groups.find(({ title }) => title === shown) ?? PAPER;
  return (
    <div className="run-acts order-1 grid gap-3">
      {!isOnce && !isFitting(session) && <NextLine session={session} />}
      <GroupChoice
        groups={groups}
        chosen={shown}
        next={isOnce ? null : next.group}
        onChoose={(title) => setChoice({ title, at: next.say })}
      />
      <fieldset className="row min-h-[44px]">
        <legend className="visually-hidden">{shown}</legend>
        {group.acts
          .filter(({ isOffered }) => isOffered?.(session) ?? true)
          .map(({ label, does }) => (
            <Button key={label} onClick={() => does(session, performance.now())}>
              {label}
            </Button>
          ))}
        {shown === "Lock" && <Button onClick={() => onForm("numbers")}>Change the combination</Button>}
        {shown === "Paper" && <PaperActs {...props} />}
      </fieldset>
      <RunCautions ids={group.cautions} />
    </div>
  );
}
