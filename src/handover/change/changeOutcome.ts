import type { ChangeTry } from "../../drill/marking/tryResult";
import type { Change } from "./change";
import { SET_OFF_LEAST, settingErrors } from "./changeFault";
import { opensTo } from "./opensTo";
import { PackChange } from "./packChange";

/** How a change of combination left the lock. */
export type ChangeLeft = ChangeTry["outcome"];

/**
 * How a change has left the lock so far: the one rule for every screen, mark and record, read off the mechanics.
 *
 * Whether the key is still in says nothing of what the lock is set to. Turned in the lock, it leaves the wheels free.
 */
export function leftBy(change: Change): ChangeLeft {
  const { profile, present, wanted, setCombination } = change;
  if (change instanceof PackChange && change.isSpoiled) return "spoiled";
  if (setCombination === null) return "key-turned";
  const moved = settingErrors({ profile, wanted: present, setTo: setCombination });
  if (moved.every((error) => Math.abs(error) < SET_OFF_LEAST)) return "unchanged";
  return opensTo(profile, setCombination, wanted) ? "true" : "off";
}
