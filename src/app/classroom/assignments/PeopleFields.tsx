import { Check } from "../../parts/controls/Check";
import { NumberField } from "../../parts/controls/NumberField";
import { shownName } from "../../parts/shownName";
import type { RosterPerson } from "../roster/RosterTable";
import type { AssignmentDraft, DraftProblems } from "./assignmentDraft";
import { Radios } from "./Radios";

interface FieldsProps {
  readonly people: readonly RosterPerson[];
  readonly draft: AssignmentDraft;
  readonly problems: DraftProblems;
  readonly onChange: (part: Partial<AssignmentDraft>) => void;
}

/** The same people with one more, or without one. */
function switched(people: ReadonlySet<string>, id: string, isIn: boolean): ReadonlySet<string> {
  const next = new Set(people);
  if (isIn) next.add(id);
  else next.delete(id);
  return next;
}

/** The same extra times with another one for a person; without it, the person has that of the roster. */
function withExtra(extra: ReadonlyMap<string, number>, id: string, percent: number | undefined) {
  const next = new Map(extra);
  if (percent === undefined) next.delete(id);
  else next.set(id, percent);
  return next;
}

/** Whom it is for: the whole class, or some of it. */
export function ForFields({ people, draft, problems, onChange }: FieldsProps) {
  return (
    <div>
      <Radios
        label="For"
        value={draft.isWhole ? "class" : "some"}
        choices={[
          ["class", "the whole class, and those who join later"],
          ["some", "some people"],
        ]}
        onChoice={(choice) => onChange({ isWhole: choice === "class" })}
      />
      {!draft.isWhole && (
        <fieldset className="tiles-[200px] gap-x-5 mt-2 ml-5">
          <legend className="visually-hidden">People whom it is for</legend>
          {people.map(({ id, name }) => (
            <Check
              key={id}
              isOn={draft.people.has(id)}
              onSwitch={(isIn) => onChange({ people: switched(draft.people, id, isIn) })}
            >
              <span className="min-w-0 wrap-anywhere">{shownName(name)}</span>
            </Check>
          ))}
        </fieldset>
      )}
      {problems.people !== undefined && (
        <span className="problem" role="alert">
          {problems.people}
        </span>
      )}
    </div>
  );
}

/** More time for those who need it: that of the roster, or another one for this sheet. */
export function ExtraTimeFields({ people, draft, problems, onChange }: FieldsProps) {
  const asked = people.filter(({ id }) => draft.isWhole || draft.people.has(id));
  if (asked.length === 0) return null;
  return (
    <details open={draft.extraTime.size > 0 || undefined}>
      <summary className="py-1 phone:py-3 font-medium">Extra time for a person who needs it</summary>
      <small className="block my-2">
        Where a field is empty, the extra time on the roster counts. Extra time makes every time limit and every longest
        mean time of the sheet longer.
      </small>
      <ul className="plain tiles-[280px] gap-x-6">
        {asked.map(({ id, name, extraTime }) => (
          <li key={id} className="py-1">
            <NumberField
              label={shownName(name)}
              value={draft.extraTime.get(id)}
              onNumber={(percent) => onChange({ extraTime: withExtra(draft.extraTime, id, percent) })}
              size={4}
              looks={{ field: "flex items-center gap-3", label: "flex-1 min-w-0 wrap-anywhere" }}
            >
              % <small>roster: {extraTime} %</small>
            </NumberField>
          </li>
        ))}
      </ul>
      {problems.extraTime !== undefined && (
        <span className="problem" role="alert">
          {problems.extraTime}
        </span>
      )}
    </details>
  );
}
