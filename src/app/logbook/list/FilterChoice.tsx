import { useId } from "react";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { type Choices, Select } from "../../parts/controls/Select";
import { shortTitle } from "../../results/attemptRows";

interface FilterChoiceProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly choices: Choices<Value>;
  readonly onChoice: (value: Value) => void;
}

/** One thing that a list is narrowed by, with its label in sight. */
export function FilterChoice<Value extends string>({ label, ...choice }: FilterChoiceProps<Value>) {
  const id = useId();
  return (
    <span className="row gap-y-1 max-w-full">
      <label htmlFor={id} className="text-soft">
        {label}
      </label>
      <Select id={id} {...choice} />
    </span>
  );
}

const LOCKS: Choices = [
  ["", "every lock"],
  ...SHIPPED_PROFILES.map((profile) => [profile.id, shortTitle(profile, profile.id)] as const),
];

interface LockFilterProps {
  readonly profileId: string | undefined;
  readonly onProfile: (profileId: string | undefined) => void;
}

/** Narrows a list to one of the shipped locks. */
export function LockFilter({ profileId, onProfile }: LockFilterProps) {
  return (
    <FilterChoice
      label="Lock"
      value={profileId ?? ""}
      choices={LOCKS}
      onChoice={(value) => onProfile(value === "" ? undefined : value)}
    />
  );
}

/** Why a list of misses may lack some, or a figure some tries. */
export function UntoldNote({ untold }: { readonly untold: readonly string[] }) {
  if (untold.length === 0) return null;
  return <p className="text-soft">Tries of a sitting under way count here after the sitting.</p>;
}
