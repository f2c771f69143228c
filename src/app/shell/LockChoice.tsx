import type { Profile } from "../../lock/profile";

interface LockChoiceProps {
  readonly locks: readonly Profile[];
  readonly lock: Profile;
  readonly onLock: (lock: Profile) => void;
}

/** Which of some locks is in hand. */
export function LockChoice({ locks, lock, onLock }: LockChoiceProps) {
  return (
    <select
      className="field"
      aria-label="Lock"
      value={locks.indexOf(lock)}
      onChange={(event) => onLock(locks[Number(event.currentTarget.value)] ?? lock)}
    >
      {locks.map((one, k) => (
        <option key={one.id} value={k}>
          {one.title}
        </option>
      ))}
    </select>
  );
}
