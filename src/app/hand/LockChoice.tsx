import type { Profile } from "../../lock/profile";
import { Select } from "../parts/controls/Select";

interface LockChoiceProps {
  readonly locks: readonly Profile[];
  readonly lock: Profile;
  readonly onLock: (lock: Profile) => void;
  readonly className?: string;
}

/** Which of some locks is in hand. A profile from a file may bear the id of another, so a lock goes by its place. */
export const LockChoice = ({ locks, lock, onLock, ...looks }: LockChoiceProps) => (
  <Select
    {...looks}
    aria-label="Lock"
    value={`${locks.indexOf(lock)}`}
    choices={locks.map(({ title }, k) => [`${k}`, title])}
    onChoice={(place) => onLock(locks[Number(place)] ?? lock)}
  />
);
