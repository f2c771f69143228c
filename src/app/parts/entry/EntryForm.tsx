import { type FormEvent, type ReactNode, useState } from "react";
import { Notice } from "../Notice";
import { messageOf } from "../page/messageOf";
import { takeFocus } from "../page/takeFocus";

/** A field of a form, and what fills it in for a person who has a keeper of passwords. */
export interface EntryField<Name extends string = string> {
  readonly name: Name;
  readonly label: string;
  readonly hint?: string;
  readonly fill?: "username" | "current-password" | "new-password" | "name" | "organization";
  readonly least?: number;
  readonly value?: string;
  /** Whether it may be left empty; by what the other fields have, where it goes by them. */
  readonly isOptional?: boolean | ((values: Readonly<Record<string, string>>) => boolean);
  readonly isDigits?: boolean;
  /** What a keyboard on the screen makes of small letters; nothing where left out. */
  readonly capitals?: "characters" | "words";
}

interface EntryFormProps<Name extends string> {
  readonly fields: readonly EntryField<Name>[];
  readonly button: string;
  /** On the button while it is being done; the same where left out. */
  readonly busy?: string;
  /** What is asked for first, where that is not the first field. */
  readonly focusesButton?: boolean;
  readonly longest?: number;
  readonly onEnter: (values: Readonly<Record<Name, string>>) => Promise<void>;
  /** Above the fields. */
  readonly intro?: ReactNode;
  /** Beside the button. */
  readonly children?: ReactNode;
}

const LONGEST = 200;
const isSecret = ({ fill }: EntryField) => fill === "current-password" || fill === "new-password";
const capitalsOf = ({ fill, capitals }: EntryField) => (fill === "username" ? "none" : capitals);

interface FieldProps {
  readonly field: EntryField;
  readonly value: string;
  readonly longest: number;
  readonly isFirst: boolean;
  readonly isOptional: boolean;
  readonly onText: (text: string) => void;
}

const isOptionalIn = ({ isOptional = false }: EntryField, values: Readonly<Record<string, string>>): boolean =>
  typeof isOptional === "function" ? isOptional(values) : isOptional;

function Field({ field, value, longest, isFirst, isOptional, onText }: FieldProps) {
  const { label, hint, fill = "off", least, isDigits } = field;
  return (
    <label className="block">
      {label} {hint !== undefined && <small>{hint}</small>}
      <input
        ref={isFirst ? takeFocus : undefined}
        className="field block w-full mt-2"
        type={isSecret(field) ? "password" : "text"}
        value={value}
        required={!isOptional}
        minLength={least}
        maxLength={longest}
        autoComplete={fill}
        autoCapitalize={capitalsOf(field)}
        inputMode={isDigits === true ? "numeric" : undefined}
        spellCheck={false}
        onChange={({ currentTarget }) => onText(currentTarget.value)}
      />
    </label>
  );
}

/** A short form: its fields, one button, and what went wrong. */
export function EntryForm<Name extends string>(props: EntryFormProps<Name>) {
  const { fields, button, busy = button, focusesButton = false, longest = LONGEST, onEnter, intro, children } = props;
  const [values, setValues] = useState(
    () => Object.fromEntries(fields.map(({ name, value = "" }) => [name, value])) as Record<Name, string>,
  );
  const [problem, setProblem] = useState<string | null>(null);
  const [isAsking, setIsAsking] = useState(false);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (isAsking) return;
    setIsAsking(true);
    setProblem(null);
    try {
      await onEnter(values);
    } catch (error) {
      setProblem(messageOf(error));
    }
    setIsAsking(false);
  };
  return (
    <form className="grid gap-4 max-w-[640px]" onSubmit={submit}>
      {intro}
      {fields.map((field, k) => (
        <Field
          key={field.name}
          field={field}
          value={values[field.name]}
          longest={longest}
          isFirst={k === 0 && !focusesButton}
          isOptional={isOptionalIn(field, values)}
          onText={(text) => setValues({ ...values, [field.name]: text })}
        />
      ))}
      {problem !== null && <Notice className="">{problem}</Notice>}
      <div className="row gap-x-4">
        <button type="submit" className="button primary" ref={focusesButton ? takeFocus : undefined}>
          {isAsking ? busy : button}
        </button>
        {children}
      </div>
    </form>
  );
}
