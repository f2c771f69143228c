import type { DoorToFit } from "../../fitting/doorToFit";
import { seededChance } from "../../statistics/chance";
import type { Problem } from "../../wording/problem";
import { drawNewParts, drawTray } from "./begunRun";
import { type RecordedRun, wrongAt } from "./recordedRun";
import { runProblem } from "./rules/runWords";
import { drawScene, type HandoverScene } from "./scene";

const isSameDoor = (one: DoorToFit, other: DoorToFit): boolean =>
  one.slotAt === other.slotAt && one.bend.x_mm === other.bend.x_mm && one.bend.y_mm === other.bend.y_mm;

const FIELDS = ["door", "lock", "height_in", "isReleaseBlocked", "second", "observer"] as const;

function otherScene(scene: HandoverScene, seed: number): Problem | undefined {
  const drawn = drawScene(seededChance(seed));
  const field = FIELDS.find((one) => scene[one] !== drawn[one]);
  return field && runProblem("scene-not-drawn", ["scene", field], { seed, said: scene[field], drawn: drawn[field] });
}

/** New parts of a run that are not those which its seed draws for their place. */
function otherParts({ profile, seed, events }: RecordedRun): Problem | undefined {
  let live: readonly RecordedRun["events"][number][] = [];
  for (const [index, event] of events.entries()) {
    live = event.type === "run.wentBack" ? live.slice(0, event.steps) : [...live, event];
    if (event.type !== "parts.replaced") continue;
    const place = live.filter(({ type }) => type === "parts.replaced").length;
    if (event.slotAt !== drawNewParts(profile, seed, place).slotAt) {
      return wrongAt(events, index, runProblem("parts-not-drawn", [], { seed }));
    }
  }
  return undefined;
}

/** What is hidden in a run otherwise than its seed draws it; undefined where nothing is. */
export function seedMisfit(run: RecordedRun): Problem | undefined {
  const { profile, seed, scene, fitting } = run;
  const isTrayDrawn = fitting === undefined || isSameDoor(fitting, drawTray(profile, seed));
  return (
    otherScene(scene, seed) ??
    (isTrayDrawn ? undefined : runProblem("tray-not-drawn", ["fitting"], { seed })) ??
    otherParts(run)
  );
}
