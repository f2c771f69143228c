import { createContext, type ReactNode, useContext, useId, useState } from "react";
import { NumberField as AnyNumberField } from "../../parts/controls/NumberField";
import { timeOf, timeText } from "../../parts/timeText";

/** Sentences by the path of the field they belong to. */
export const ProblemsContext = createContext<ReadonlyMap<string, string>>(new Map());

/**
 * The sentence for a field, or for a part of it: `title`, and `combinations.list` for `combinations.list[2]`.
 *
 * @param hasFields - whether its parts have fields of their own, which say what is wrong with them
 */
export function useProblem(path: string, hasFields = false): string | undefined {
  const problems = useContext(ProblemsContext);
  const exact = problems.get(path);
  if (exact !== undefined || hasFields) return exact;
  return [...problems].find(([at]) => at.startsWith(`${path}[`) || at.startsWith(`${path}.`))?.[1];
}

interface FieldProps {
  readonly label: string;
  /** Path of the field in the sheet, by which its problem is found. */
  readonly path: string;
}

function Problem({ id, says }: { readonly id: string; readonly says: string | undefined }) {
  return says === undefined ? null : (
    <span id={`${id}-problem`} className="problem">
      {says}
    </span>
  );
}

/** What an input gets so that its label and its problem belong to it. */
const told = (id: string, says: string | undefined) =>
  says === undefined ? { id } : { id, "aria-invalid": true, "aria-describedby": `${id}-problem` };

function Labelled({
  label,
  id,
  says,
  children,
}: {
  label: string;
  id: string;
  says: string | undefined;
  children: ReactNode;
}) {
  return (
    <div className="sheets-field w-full">
      <label className="block mb-1 text-small text-soft" htmlFor={id}>
        {label}
      </label>
      {children}
      <Problem id={id} says={says} />
    </div>
  );
}

/** Text that stands for a value: as typed while it means that value, else as the value is written. */
function useDraft<Value>(value: Value, write: (value: Value) => string, read: (text: string) => Value) {
  const [text, setText] = useState(() => write(value));
  const isMeant = JSON.stringify(read(text)) === JSON.stringify(value);
  return [isMeant ? text : write(value), setText] as const;
}

interface TextFieldProps extends FieldProps {
  readonly value: string;
  readonly onText: (text: string) => void;
  readonly isLong?: boolean;
}

/** A text, of one line or of several. */
export function TextField({ label, path, value, onText, isLong = false }: TextFieldProps) {
  const says = useProblem(path);
  const id = useId();
  const Input = isLong ? "textarea" : "input";
  return (
    <Labelled {...{ label, id, says }}>
      <Input
        className="field"
        value={value}
        {...told(id, says)}
        onChange={(event: { currentTarget: { value: string } }) => onText(event.currentTarget.value)}
      />
    </Labelled>
  );
}

interface LinesFieldProps<Value> extends FieldProps {
  readonly value: Value;
  readonly write: (value: Value) => string;
  readonly read: (text: string) => Value;
  readonly onValue: (value: Value) => void;
}

/** A list as text, one thing a line. */
export function LinesField<Value>({ label, path, value, write, read, onValue }: LinesFieldProps<Value>) {
  const says = useProblem(path);
  const id = useId();
  const [text, setText] = useDraft(value, write, read);
  return (
    <Labelled {...{ label, id, says }}>
      <textarea
        className="field"
        value={text}
        {...told(id, says)}
        onChange={(event) => {
          setText(event.currentTarget.value);
          onValue(read(event.currentTarget.value));
        }}
      />
    </Labelled>
  );
}

interface NumberFieldProps extends FieldProps {
  /** A kept sheet has null where no number was typed. */
  readonly value: number | null | undefined;
  readonly onNumber: (value: number | undefined) => void;
  /** A share, typed and shown in percent. */
  readonly isPercent?: boolean;
}

const NUMBER_LOOKS = {
  field: "sheets-field w-full",
  label: "block mb-1 text-small text-soft",
  input: "field sheets-number",
};

/** A number; empty means that it is not asked. */
export function NumberField({ path, ...field }: NumberFieldProps) {
  return <AnyNumberField {...field} says={useProblem(path)} looks={NUMBER_LOOKS} />;
}

/** A time, as m:ss or in seconds; empty means that it is not asked. */
export function TimeField({ label, path, value, onNumber }: Omit<NumberFieldProps, "isPercent">) {
  const says = useProblem(path);
  const id = useId();
  const write = (seconds: number | null | undefined) => (Number.isFinite(seconds) ? timeText(Number(seconds)) : "");
  const [text, setText] = useDraft<number | null | undefined>(value, write, timeOf);
  return (
    <Labelled {...{ label, id, says }}>
      <input
        className="field sheets-number"
        placeholder="m:ss"
        value={text}
        {...told(id, says)}
        onChange={(event) => {
          setText(event.currentTarget.value);
          onNumber(timeOf(event.currentTarget.value));
        }}
      />
    </Labelled>
  );
}

interface ChoiceFieldProps<Choice extends string> extends FieldProps {
  readonly value: Choice;
  readonly choices: readonly (readonly [Choice, string])[];
  readonly onChoice: (choice: Choice) => void;
  /** Whether its parts have fields of their own. */
  readonly hasFields?: boolean;
}

/** One of a few. */
export function ChoiceField<Choice extends string>({
  label,
  path,
  value,
  choices,
  onChoice,
  hasFields = false,
}: ChoiceFieldProps<Choice>) {
  const says = useProblem(path, hasFields);
  const id = useId();
  return (
    <Labelled {...{ label, id, says }}>
      <select
        className="field"
        value={value}
        {...told(id, says)}
        onChange={(event) => {
          const chosen = choices.find(([choice]) => choice === event.currentTarget.value);
          if (chosen !== undefined) onChoice(chosen[0]);
        }}
      >
        {choices.map(([choice, words]) => (
          <option key={choice} value={choice}>
            {words}
          </option>
        ))}
      </select>
    </Labelled>
  );
}

/** Yes or no. */
export function CheckField({
  label,
  value,
  onCheck,
}: {
  readonly label: string;
  readonly value: boolean;
  readonly onCheck: (value: boolean) => void;
}) {
  return (
    <label className="sheets-check check">
      <input type="checkbox" checked={value} onChange={(event) => onCheck(event.currentTarget.checked)} />
      {label}
    </label>
  );
}
