import { describe, expect, test } from "vitest";
import { drawTrouble, kindsFor } from "../../../src/handover/trouble/drawTrouble";
import { markDiagnosis } from "../../../src/handover/trouble/markDiagnosis";
import { TROUBLE_KINDS, type TroubleKind } from "../../../src/handover/trouble/trouble";
import { TroubleBench } from "../../../src/handover/trouble/troubleBench";
import { SHIPPED_PROFILES } from "../../../src/lock/shippedProfiles";
import { seededChance } from "../../../src/statistics/chance";
import { diagnose } from "../../support/diagnostician";

/** How many locks are diagnosed, and the share of them that may be missed; what was missed is shown. */
const OF_A_LOCK = { runs: 25, share: 0.05 };
const OF_A_FIT = { runs: 100, share: 0.01 };
/** What a bad fit of the dial leaves behind. */
const FITTING_KINDS: readonly TroubleKind[] = [
  "ring-off-center",
  "wrong-keyway",
  "key-not-seated",
  "end-play",
  "dial-rubs",
];
const cases = SHIPPED_PROFILES.flatMap((profile) => kindsFor(profile).map((kind) => ({ profile, kind })));

/** One lock, diagnosed by the instruments alone. */
function diagnosed({ profile, kind }: (typeof cases)[number], seed: number) {
  const { card, trouble } = drawTrouble(profile, [kind], seed);
  const bench = new TroubleBench({ card, trouble }, seededChance(seed + 1000));
  const named = diagnose(card, bench);
  return { trouble, named, mark: markDiagnosis(trouble, named, bench.log) };
}

describe("every condition can be found by the instruments alone", () => {
  test("there are at least eight, and every one is found in some lock", () => {
    expect(TROUBLE_KINDS.length).toBeGreaterThanOrEqual(8);
    expect([...new Set(cases.map(({ kind }) => kind))].sort()).toEqual([...TROUBLE_KINDS].sort());
  });

  test.each(cases)("$profile.id with $kind is named right, size and all", (one) => {
    const { runs, share } = FITTING_KINDS.includes(one.kind) ? OF_A_FIT : OF_A_LOCK;
    const missed = Array.from({ length: runs }, (_, k) => ({ seed: k + 1, ...diagnosed(one, k + 1) })).filter(
      ({ mark }) => mark.points.kind + mark.points.size < 2,
    );
    expect(missed.length <= runs * share ? [] : missed).toEqual([]);
  });
});
