import { drawTrouble } from "../../src/handover/trouble/drawTrouble";
import { markDiagnosis } from "../../src/handover/trouble/markDiagnosis";
import type { TroubleKind } from "../../src/handover/trouble/trouble";
import { TroubleBench } from "../../src/handover/trouble/troubleBench";
import type { Profile } from "../../src/lock/profile";
import { seededChance } from "../../src/statistics/chance";
import { diagnose } from "./diagnostician";

/** One lock with a defect, diagnosed by the instruments alone. */
export function troubleTrial(profile: Profile, kind: TroubleKind, seed: number) {
  const { card, trouble } = drawTrouble(profile, [kind], seed);
  const bench = new TroubleBench({ card, trouble }, seededChance(seed + 1000));
  const named = diagnose(card, bench);
  const { points } = markDiagnosis(trouble, named, bench.log);
  return { seed, card, trouble, named, points, isRight: points.kind + points.size === 2 };
}
