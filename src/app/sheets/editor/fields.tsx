import { createContext, type ReactNode, useContext, useId, useState } from "react";
import { Check } from "../../parts/controls/Check";
import { NumberField as AnyNumberField } from "../../parts/controls/NumberField";
import { type Choices, Select } from "../../parts/controls/Select";
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

interface ToldOptions {
  readonly hasFields?: boolean;
  /** What its value means, where the label does not say it all. */
  readonly note?: string | undefined;
}

/** What is wrong with a field and what its value means, and what its input gets so that label, problem and note belong to it. */
function useTold(path: string, { hasFields = false, note }: ToldOptions = {}) {
  const says = useProblem(path, hasFields);
  const id = useId();
  const describedBy = [note !== undefined && `${id}-note`, says !== undefined && `${id}-problem`].filter(Boolean);
  return {
    says,
    note,
    input: {
      id,
      ...(says !== undefined && { "aria-invalid": true }),
      ...(describedBy.length > 0 && { "aria-describedby": describedBy.join(" ") }),
    },
  };
}

interface LabelledProps {
  readonly label: string;
  readonly told: ReturnType<typeof useTold>;
  readonly children: ReactNode;
}

function Labelled({ label, told: { says, note, input }, children }: LabelledProps) {
  const { id } = input;
  return (
    <div className="sheets-field w-full">
      <label className="block mb-1 text-small text-soft" htmlFor={id}>
        {label}
      </label>
      {children}
      {note !== undefined && (
        <span id={`${id}-note`} className="block mt-1 text-small text-soft">
          {note}
        </span>
      )}
      {says !== undefined && (
        <span id={`${id}-problem`} className="problem">
          {says}
        </span>
      )}
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
  const told = useTold(path);
  const Input = isLong ? "textarea" : "input";
  return (
    <Labelled {...{ label, told }}>
      <Input
        className="field"
        value={value}
        {...told.input}
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
  const told = useTold(path);
  const [text, setText] = useDraft(value, write, read);
  return (
    <Labelled {...{ label, told }}>
      <textarea
        className="field"
        value={text}
        {...told.input}
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
  const told = useTold(path);
  const write = (seconds: number | null | undefined) => (Number.isFinite(seconds) ? timeText(Number(seconds)) : "");
  const [text, setText] = useDraft<number | null | undefined>(value, write, timeOf);
  return (
    <Labelled {...{ label, told }}>
      <input
        className="field sheets-number"
        placeholder="m:ss"
        value={text}
        {...told.input}
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
  readonly choices: Choices<Choice>;
  readonly onChoice: (choice: Choice) => void;
  /** Whether its parts have fields of their own. */
  readonly hasFields?: boolean;
  /** What the choice means. */
  readonly note?: string | undefined;
}

/** One of a few. */
export function ChoiceField<Choice extends string>(props: ChoiceFieldProps<Choice>) {
  const { label, path, hasFields = false, note, ...choice } = props;
  const told = useTold(path, { hasFields, note });
  return (
    <Labelled {...{ label, told }}>
      <Select {...choice} {...told.input} />
    </Labelled>
  );
}

interface CheckFieldProps extends Pick<FieldProps, "label"> {
  readonly value: boolean;
  readonly onCheck: (value: boolean) => void;
}

/** Yes or no. */
export const CheckField = ({ label, value, onCheck }: CheckFieldProps) => (
  <Check className="sheets-check check" isOn={value} onSwitch={onCheck}>
    {label}
  </Check>
);
