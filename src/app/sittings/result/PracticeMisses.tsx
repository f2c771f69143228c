import { useMemo } from "react";
import { missesSheet } from "../../../progress/practiceMisses";
import { Button } from "../../parts/controls/Button";
import type { KeptRecord } from "../../verdicts/keptRecord";
import type { CurrentSitting } from "../session/currentSitting";

interface PracticeMissesProps {
  readonly current: CurrentSitting;
  readonly kept: KeptRecord;
}

/** Goes on to a sheet of what this sitting missed. The record stays as it is. */
export function PracticeMisses({ current, kept }: PracticeMissesProps) {
  const sheet = useMemo(() => missesSheet(kept.record), [kept]);
  if (sheet === null) return null;
  const begin = () => {
    current.putAway();
    location.replace("#/sittings");
    current.begin(sheet, null);
  };
  return <Button onClick={begin}>Practice these misses</Button>;
}
