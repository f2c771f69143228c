import { type FormEvent, useState } from "react";
import { Check } from "../../parts/controls/Check";
import { NumberField } from "../../parts/controls/NumberField";
import type { RosterPerson } from "../roster/RosterTable";
import { type AssignmentDraft, draftOf, draftProblems, newDraft } from "./assignmentDraft";
import type { Assignment } from "./assignmentWords";
import { ExtraTimeFields, ForFields } from "./PeopleFields";
import { Radios } from "./Radios";
import { ChosenSheet, SheetField } from "./SheetField";
import type { OfferedSheet } from "./sheetSources";
import { TimeFields } from "./TimeFields";

/** An assignment that is changed or assigned anew, with its sheet. */
export interface AssignedSheet {
  readonly assignment: Assignment;
  readonly sheet: OfferedSheet;
}

interface FormProps {
  /** Null for a new one. */
  readonly assigned: AssignedSheet | null;
  /** An earlier one that a new one begins as. */
  readonly earlier?: AssignedSheet | undefined;
  readonly people: readonly RosterPerson[];
  /** Address of the list. */
  readonly listAddress: string;
  readonly onSave: (draft: AssignmentDraft) => Promise<unknown>;
}

/** What is filled in, and what is wrong with it once somebody has tried to send it. */
function useAssignmentForm({ assigned, earlier, onSave }: Pick<FormProps, "assigned" | "earlier" | "onSave">) {
  const before = assigned?.assignment ?? null;
  const [draft, setDraft] = useState(() =>
    before === null ? newDraft(Date.now(), earlier?.assignment) : draftOf(before),
  );
  const [chosen, setChosen] = useState((assigned ?? earlier)?.sheet ?? null);
  const [isChecked, setIsChecked] = useState(false);
  const [isSaving, setIsSaving] = useState(false);
  const whole = { ...draft, sheet: chosen === assigned?.sheet ? null : (chosen?.sheet ?? null) };
  const problems = draftProblems(whole, before);
  const isSound = Object.keys(problems).length === 0;
  const onChange = (part: Partial<AssignmentDraft>) => setDraft((now) => ({ ...now, ...part }));
  return {
    before,
    draft,
    chosen,
    onChange,
    problems: isChecked ? problems : {},
    isRefused: isChecked && !isSound,
    choose(sheet: OfferedSheet | null) {
      setChosen(sheet);
      // A sheet says by its rules what it is made for; the instructor may say otherwise.
      if (before === null && sheet !== null)
        onChange({ kind: sheet.sheet.sitting === undefined ? "practice" : "test" });
    },
    async submit(event: FormEvent) {
      event.preventDefault();
      setIsChecked(true);
      if (!isSound || isSaving) return;
      setIsSaving(true);
      await onSave(whole);
      setIsSaving(false);
    },
  };
}

/** What an instructor sets: which sheet, to whom, when, how often. */
export function AssignmentForm({ assigned, earlier, people, listAddress, onSave }: FormProps) {
  const form = useAssignmentForm({ assigned, earlier, onSave });
  const { before, draft, chosen, onChange, problems } = form;
  return (
    <form className="stack gap-5" noValidate onSubmit={form.submit}>
      {before !== null && assigned !== null && before.begun > 0 ? (
        <div className="stack">
          <p className="font-medium">Sheet</p>
          <ChosenSheet chosen={assigned.sheet} />
          <small>Somebody has begun it, so its sheet stays. To use another one, make a new assignment.</small>
        </div>
      ) : (
        <SheetField
          assigned={(assigned ?? earlier)?.sheet ?? null}
          chosen={chosen}
          onChoose={form.choose}
          says={problems.sheet}
        />
      )}
      <ForFields people={people} draft={draft} problems={problems} onChange={onChange} />
      <TimeFields draft={draft} problems={problems} onChange={onChange} />
      <Radios
        label="What it is"
        value={draft.kind}
        choices={[
          ["test", "a test: apprentices see that before they begin"],
          ["practice", "practice"],
        ]}
        onChoice={(kind) => onChange({ kind })}
      />
      <div>
        <Check isOn={draft.hasLimit} onSwitch={(hasLimit) => onChange({ hasLimit })}>
          The number of attempts is limited
        </Check>
        {draft.hasLimit && (
          <NumberField
            label="Attempts for each person"
            value={draft.attempts}
            onNumber={(attempts) => onChange({ attempts })}
            size={4}
            says={problems.attempts}
            looks={{ field: "flex flex-wrap items-center gap-3 mt-2 ml-5" }}
          />
        )}
      </div>
      <ExtraTimeFields people={people} draft={draft} problems={problems} onChange={onChange} />
      <div className="row gap-x-4">
        <button type="submit" className="button primary">
          {before === null ? "Assign the sheet" : "Save the change"}
        </button>
        <a href={listAddress}>Back to the list</a>
        {form.isRefused && <span role="status">Fix the marked fields first.</span>}
      </div>
    </form>
  );
}
