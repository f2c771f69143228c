import type { PlannedTry } from "../../../drill/sheet/planTries";

/** Tries that follow each other at one station; places counted from 1. */
export interface TryGroup {
  readonly station: number;
  readonly first: number;
  readonly last: number;
}

/** Joins tries that follow each other at one station. */
export function tryGroups(tries: readonly Pick<PlannedTry, "station">[]): TryGroup[] {
  const groups: TryGroup[] = [];
  tries.forEach(({ station }, index) => {
    const group = groups.at(-1);
    const place = index + 1;
    if (group?.station === station) groups[groups.length - 1] = { ...group, last: place };
    else groups.push({ station, first: place, last: place });
  });
  return groups;
}

/** "Try 4", "Tries 1 to 10". */
export function groupText({ first, last }: TryGroup): string {
  return first === last ? `Try ${first}` : `Tries ${first} to ${last}`;
}
