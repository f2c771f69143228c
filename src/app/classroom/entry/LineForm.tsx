import { type FormEvent, useState } from "react";

interface LineFormProps {
  readonly label: string;
  readonly button: string;
  readonly value?: string;
  readonly isPrimary?: boolean;
  /** @returns whether it was taken */
  readonly onLine: (text: string) => Promise<boolean>;
}

const LONGEST = 100;

/** One line of text with its button; the line is empty again once it was taken, and stays to be changed where it was not. */
export function LineForm({ label, button, value = "", isPrimary = false, onLine }: LineFormProps) {
  const [text, setText] = useState(value);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (text.trim() === "") return;
    if (await onLine(text.trim())) setText(value);
  };
  return (
    <form className="row items-end" onSubmit={submit}>
      <label className="block">
        {label}
        <input
          className="field block w-[min(320px,100%)] mt-2"
          value={text}
          required
          maxLength={LONGEST}
          autoComplete="off"
          onChange={({ currentTarget }) => setText(currentTarget.value)}
        />
      </label>
      <button type="submit" className={`button ${isPrimary ? "primary" : ""}`}>
        {button}
      </button>
    </form>
  );
}
