import type { ReactNode } from "react";

interface CheckProps {
  readonly isOn: boolean;
  readonly onSwitch: (isOn: boolean) => void;
  readonly isDisabled?: boolean;
  readonly className?: string;
  /** What is so while it is on. */
  readonly children: ReactNode;
}

/** Yes or no. */
export function Check({ isOn, onSwitch, isDisabled = false, className = "check", children }: CheckProps) {
  return (
    <label className={className}>
      <input
        type="checkbox"
        checked={isOn}
        disabled={isDisabled}
        onChange={({ currentTarget }) => onSwitch(currentTarget.checked)}
      />
      {children}
    </label>
  );
}
