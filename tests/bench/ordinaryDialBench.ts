import { motionOf } from "../support/film/handMotion";
import { PAPER_DIAL } from "../support/film/ordinaryDial";
import { dialedLegs, GRIPS, type OrdinaryFilm, ordinaryFilm } from "../support/film/ordinaryFilm";
import { followedFilm, setUpByFilm } from "../support/film/ordinaryTrial";
import { seeded } from "../support/seeded";

const SMALL = { width: 320, height: 240, focal: 300, tilt: 20, k1: -0.1 };
const USUAL: Omit<OrdinaryFilm, "motion" | "chance"> = { camera: SMALL, radius: 85, fingers: GRIPS.tips };

/** Films by what is unusual about them. */
const ROWS: Readonly<Record<string, { readonly film: Partial<OrdinaryFilm>; readonly fastest?: number }>> = {
  usual: { film: { fingers: GRIPS.fromBelow } },
  "hand from the right": { film: { fingers: GRIPS.fromRight } },
  "tilt 35": { film: { camera: { ...SMALL, tilt: 35, tiltFrom: 240 } } },
  "conical face": { film: { disc: { cone: 4 }, fingers: GRIPS.fromBelow } },
  "paper dial": { film: { look: PAPER_DIAL } },
  dim: { film: { sensor: { exposureMs: 25, readNoise: 5, shotNoise: 5 }, light: { strength: () => 0.35 } } },
  "30 % dropped, spun fast": { film: { dropped: 0.3, sensor: { moments: 8 } }, fastest: 500 },
  "black for 0.8 s in 4 s": { film: { isBlack: (at) => at % 4000 < 830 }, fastest: 300 },
  "no numerals": { film: { look: { numbered: 0 } } },
};

const spread = (offs: readonly number[]) => {
  const mean = offs.reduce((sum, off) => sum + off, 0) / offs.length;
  const sd = Math.sqrt(offs.reduce((sum, off) => sum + (off - mean) ** 2, 0) / offs.length);
  return `${mean.toFixed(3)} ± ${sd.toFixed(3)} (${Math.max(...offs.map(Math.abs)).toFixed(2)})`;
};

const only = process.argv[2];
for (const [name, { film, fastest = 200 }] of Object.entries(ROWS)) {
  if (only !== undefined && !name.includes(only)) continue;
  const { dropped: _, isBlack: __, ...still } = film;
  const reference = setUpByFilm({ ...USUAL, ...still, chance: seeded(1) });
  if ("code" in reference) {
    process.stdout.write(`${name}: refused, ${JSON.stringify(reference)}\n`);
    continue;
  }
  const chance = seeded(2);
  const motion = motionOf(dialedLegs(chance, 6, fastest));
  // The door is the same: it is drawn by the same chance.
  const shooting = ordinaryFilm({ ...USUAL, ...film, motion, chance: seeded(1) });
  const { atRest, moving, wrong, inDoubt, sure, frames, msPerFrame } = followedFilm(reference, shooting, () =>
    performance.now(),
  );
  process.stdout.write(
    `${name}: at rest ${spread(atRest)}, moving ${spread(moving)}, sure ${sure} of ${frames}, wrong unsaid ${wrong}, turns in doubt ${inDoubt}, ${msPerFrame.toFixed(1)} ms\n`,
  );
}
