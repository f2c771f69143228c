import { useId } from "react";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { shortTitle } from "../../results/attemptRows";

interface FilterChoiceProps {
  readonly label: string;
  readonly value: string;
  /** Value and words of each. */
  readonly choices: readonly (readonly [string, string])[];
  readonly onChoice: (value: string) => void;
}

/** One thing that a list is narrowed by, with its label in sight. */
export function FilterChoice({ label, value, choices, onChoice }: FilterChoiceProps) {
  const id = useId();
  return (
    <span className="row gap-y-1 max-w-full">
      <label htmlFor={id} className="text-soft">
        {label}
      </label>
      <select id={id} className="field" value={value} onChange={(event) => onChoice(event.currentTarget.value)}>
        {choices.map(([one, words]) => (
          <option key={one} value={one}>
            {words}
          </option>
        ))}
      </select>
    </span>
  );
}

const LOCKS: FilterChoiceProps["choices"] = [
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

interface MissesOnlyProps {
  readonly isOn: boolean;
  readonly onSwitch: (isOn: boolean) => void;
}

/** Narrows a list to what went wrong. */
export function MissesOnly({ isOn, onSwitch }: MissesOnlyProps) {
  return (
    <label className="check">
      <input type="checkbox" checked={isOn} onChange={(event) => onSwitch(event.currentTarget.checked)} />
      misses only
    </label>
  );
}

/** Why a list of misses may lack some, or a figure some tries. */
export function UntoldNote({ untold }: { readonly untold: readonly string[] }) {
  if (untold.length === 0) return null;
  return <p className="text-soft">Tries of a sitting under way count here after the sitting.</p>;
}
