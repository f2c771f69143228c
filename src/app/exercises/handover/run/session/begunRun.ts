import { drawDoor } from "../../../../../fitting/doorToFit";
import type { RecordedRun } from "../../../../../handover/run/recordedRun";
import { drawScene } from "../../../../../handover/run/scene";
import { seededChance } from "../../../../../statistics/chance";
import type { RunSetup } from "./doorWork";

/** Beside the seed of a run, for what is hidden in its tray. */
const TRAY = 7_000_003;

/** A run in which nothing has happened yet; the same seed gives the same door. */
export function begunRun({ profile, seed, isHandsOff, isToFit }: RunSetup): RecordedRun {
  const scene = drawScene(seededChance(seed));
  const fitting = { version: 1, ...drawDoor(profile, seededChance(seed + TRAY)) } as const;
  const run = { format: "gatefall-handover", version: 1, profile, scene, seed, isHandsOff, events: [] } as const;
  return isToFit ? { ...run, fitting } : run;
}
