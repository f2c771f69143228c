import { useId } from "react";
import type { Choices } from "../../parts/controls/Select";

interface RadiosProps<Value extends string> {
  /** What is chosen. */
  readonly label: string;
  readonly value: Value;
  readonly choices: Choices<Value>;
  readonly onChoice: (value: Value) => void;
}

/** One of a few, all in sight. */
export function Radios<Value extends string>({ label, value, choices, onChoice }: RadiosProps<Value>) {
  const name = useId();
  return (
    <fieldset>
      <legend className="font-medium">{label}</legend>
      {choices.map(([one, words]) => (
        <label className="check" key={one}>
          <input type="radio" name={name} checked={one === value} onChange={() => onChoice(one)} />
          {words}
        </label>
      ))}
    </fieldset>
  );
}
