import { type FormEvent, useState } from "react";

interface LineFormProps {
  readonly label: string;
  readonly button: string;
  readonly value?: string;
  readonly isPrimary?: boolean;
  readonly onLine: (text: string) => unknown;
}

const LONGEST = 100;

/** One line of text with its button; the line is empty again once it was taken. */
export function LineForm({ label, button, value = "", isPrimary = false, onLine }: LineFormProps) {
  const [text, setText] = useState(value);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (text.trim() === "") return;
    onLine(text.trim());
    setText(value);
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
