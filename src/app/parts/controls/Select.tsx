import type { ComponentProps } from "react";

/** Value and words of each thing to choose. */
export type Choices<Value extends string = string> = readonly (readonly [value: Value, words: string])[];

interface SelectProps<Value extends string> extends Omit<ComponentProps<"select">, "value" | "onChange"> {
  readonly value: Value;
  readonly choices: Choices<Value>;
  readonly onChoice: (value: Value) => void;
}

/** One of a few, by the browser's own list. What names it, a label or `aria-label`, is given with it. */
export function Select<Value extends string>(props: SelectProps<Value>) {
  const { className = "", choices, onChoice, ...rest } = props;
  const choose = (value: string) => {
    const chosen = choices.find(([one]) => one === value);
    if (chosen !== undefined) onChoice(chosen[0]);
  };
  return (
    <select
      className={className === "" ? "field" : `field ${className}`}
      {...rest}
      onChange={({ currentTarget }) => choose(currentTarget.value)}
    >
      {choices.map(([value, words]) => (
        <option key={value} value={value}>
          {words}
        </option>
      ))}
    </select>
  );
}
