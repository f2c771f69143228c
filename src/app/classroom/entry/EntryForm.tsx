import { type FormEvent, type ReactNode, useState } from "react";
import { Notice } from "../../parts/Notice";
import { messageOf } from "../../parts/page/messageOf";
import { takeFocus } from "../../parts/page/takeFocus";

/** A field of a form, and what fills it in for a person who has a keeper of passwords. */
export interface EntryField<Name extends string = string> {
  readonly name: Name;
  readonly label: string;
  readonly hint?: string;
  readonly fill?: "username" | "current-password" | "new-password" | "name" | "organization";
  readonly least?: number;
  readonly value?: string;
}

interface EntryFormProps<Name extends string> {
  readonly fields: readonly EntryField<Name>[];
  readonly button: string;
  readonly onEnter: (values: Readonly<Record<Name, string>>) => Promise<void>;
  readonly children?: ReactNode;
}

const LONGEST = 200;
const isSecret = ({ fill }: EntryField) => fill === "current-password" || fill === "new-password";

/** A short form: its fields, one button, and what went wrong. */
export function EntryForm<Name extends string>({ fields, button, onEnter, children }: EntryFormProps<Name>) {
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
      {fields.map((field, k) => (
        <label className="block" key={field.name}>
          {field.label} {field.hint !== undefined && <small>{field.hint}</small>}
          <input
            ref={k === 0 ? takeFocus : undefined}
            className="field block w-full mt-2"
            type={isSecret(field) ? "password" : "text"}
            value={values[field.name]}
            required
            minLength={field.least}
            maxLength={LONGEST}
            autoComplete={field.fill ?? "off"}
            autoCapitalize={field.fill === "username" ? "none" : undefined}
            spellCheck={false}
            onChange={({ currentTarget }) => setValues({ ...values, [field.name]: currentTarget.value })}
          />
        </label>
      ))}
      {problem !== null && <Notice className="">{problem}</Notice>}
      <div className="row gap-x-4">
        <button type="submit" className="button primary">
          {button}
        </button>
        {children}
      </div>
    </form>
  );
}
