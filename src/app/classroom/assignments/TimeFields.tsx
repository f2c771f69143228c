import { useId } from "react";
import type { AssignmentDraft, DraftProblems } from "./assignmentDraft";

interface FieldsProps {
  readonly draft: AssignmentDraft;
  readonly problems: DraftProblems;
  readonly onChange: (part: Partial<AssignmentDraft>) => void;
}

interface MomentProps {
  readonly label: string;
  readonly value: string;
  readonly says: string | undefined;
  readonly onText: (text: string) => void;
}

function MomentField({ label, value, says, onText }: MomentProps) {
  const id = useId();
  return (
    <div>
      <label className="font-medium block mb-2" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        type="datetime-local"
        className="field"
        value={value}
        aria-invalid={says !== undefined}
        aria-describedby={says === undefined ? undefined : `${id}-says`}
        onChange={({ currentTarget }) => onText(currentTarget.value)}
      />
      {says !== undefined && (
        <span className="problem" id={`${id}-says`}>
          {says}
        </span>
      )}
    </div>
  );
}

/** When it can be begun, by the clock of this device. */
export function TimeFields({ draft, problems, onChange }: FieldsProps) {
  return (
    <div className="stack gap-2">
      <div className="row gap-x-5 items-start">
        <MomentField
          label="Can be begun from"
          value={draft.from}
          says={problems.from}
          onText={(from) => onChange({ from })}
        />
        <MomentField label="until" value={draft.until} says={problems.until} onText={(until) => onChange({ until })} />
      </div>
      <small>
        Times of this device: {Intl.DateTimeFormat().resolvedOptions().timeZone}. A sitting that was begun in time can
        be finished.
      </small>
    </div>
  );
}
