import type { Profile } from "../../lock/profile";

interface LockChoiceProps {
  readonly locks: readonly Profile[];
  readonly lock: Profile;
  readonly onLock: (lock: Profile) => void;
}

/** Which of some locks is in hand. */
export function LockChoice({ locks, lock, onLock }: LockChoiceProps) {
  const placeOf = (one: Profile) => locks.indexOf(one);
  return (
    <select
      className="field"
      aria-label="Lock"
      value={placeOf(lock)}
      onChange={(event) => onLock(locks[Number(event.currentTarget.value)] ?? lock)}
    >
      {locks.map((one) => (
        // A profile from a file may bear the id of another.
        <option key={`${one.id}-${placeOf(one)}`} value={placeOf(one)}>
          {one.title}
        </option>
      ))}
    </select>
  );
}
