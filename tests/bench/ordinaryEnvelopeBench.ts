import { type EdgeAxis, edgeOf, edgeRow } from "../support/film/edge";
import { motionOf } from "../support/film/handMotion";
import { dialedLegs, GRIPS, type OrdinaryFilm, ordinaryFilm } from "../support/film/ordinaryFilm";
import type { OrdinaryRow } from "../support/film/ordinaryRows";
import { type Followed, followedFilm, setUpByFilm } from "../support/film/ordinaryTrial";
import { seeded } from "../support/seeded";

/*
 * The edges within which an ordinary dial is set up and read, each thing by itself, by bisection on films of a dial of 70 pixels'
 * radius: the last value at which a film holds (errors of at most 0.1 at rest and 0.5 in motion, half of its frames sure, no turn in
 * doubt), and how it ends at the next and at the worst one. There it must be told: a reading that is off by more than half a graduation
 * unsaid fails the command.
 *
 *   npm run bench:ordinary-envelope
 *   npm run bench:ordinary-envelope -- tilt 3     only what has that in its name, with another seed
 */

const [, , only = "", seedText = "5"] = process.argv;
const seed = Number(seedText);

const say = (line: string) => process.stdout.write(`${line}\n`);

interface Axis extends EdgeAxis {
  readonly row: (value: number) => OrdinaryRow;
}

const CAMERA = { width: 210, height: 190, focal: 280, tilt: 20, tiltFrom: 270, k1: -0.1 };
/** A slow turn is not blurred, and one moment of each exposure draws it; what follows is drawn at eight. */
const SHARP = { moments: 1, exposureMs: 8 } as const;
const DRAWN = { moments: 8 } as const;
const USUAL: Omit<OrdinaryFilm, "motion" | "chance"> = { camera: CAMERA, radius: 70, fingers: GRIPS.fromBelow };

const camera = (one: Partial<typeof CAMERA>): OrdinaryRow => ({ film: { camera: { ...CAMERA, ...one } } });

const AXES: readonly Axis[] = [
  { name: "tilt", unit: "degrees", good: 20, bad: 70, step: 5, row: (tilt) => camera({ tilt }) },
  { name: "lens, barrel (k1)", unit: "", good: -0.1, bad: -0.7, step: 0.1, row: (k1) => camera({ k1 }) },
  {
    name: "light, 1 is full",
    unit: "",
    good: 1,
    bad: 0.1,
    step: 0.1,
    row: (light) => ({ film: { light: { strength: () => light } } }),
  },
  {
    name: "ink, on a face of 40",
    unit: "gray levels",
    good: 235,
    bad: 60,
    step: 25,
    row: (ink) => ({ film: { look: { face: 40, ink } } }),
  },
  {
    name: "exposure, at 2 turns/s",
    unit: "ms",
    good: 8,
    bad: 40,
    step: 4,
    row: (exposureMs) => ({ later: { sensor: { exposureMs, ...DRAWN } } }),
  },
  {
    name: "radius",
    unit: "pixels",
    good: 70,
    bad: 40,
    step: 5,
    row: (radius) => ({
      film: { radius, camera: { ...CAMERA, width: 3 * radius, height: 3 * radius, focal: 4 * radius } },
    }),
  },
  { name: "speed", unit: "turns/s", good: 1, bad: 8, step: 0.5, row: (turns) => ({ fastest: 100 * turns }) },
  {
    name: "frames that never come, at 2 turns/s",
    unit: "%",
    good: 0,
    bad: 80,
    step: 10,
    row: (percent) => ({ later: { dropped: percent / 100 } }),
  },
  { name: "wobble", unit: "degrees", good: 0, bad: 4, step: 0.5, row: (wobble) => ({ film: { disc: { wobble } } }) },
  {
    name: "rolling shutter, first row to last",
    unit: "ms",
    good: 0,
    bad: 40,
    step: 5,
    row: (readoutMs) => ({ later: { sensor: { ...SHARP, ...DRAWN, readoutMs } } }),
  },
];

function filmAt({ row }: Axis, value: number): Followed | string {
  const { film = {}, later = {}, fastest = 200 } = row(value);
  const conditions = { ...USUAL, ...film };
  const sensor = { ...SHARP, ...film.sensor };
  const reference = setUpByFilm({ ...conditions, sensor, chance: seeded(seed) }, undefined, 6);
  if ("code" in reference) return reference.code;
  const motion = motionOf(dialedLegs(seeded(seed + 1), 2, fastest));
  const turning = { ...conditions, sensor: { ...sensor, ...DRAWN }, ...later, motion, chance: seeded(seed) };
  return followedFilm(reference, ordinaryFilm(turning));
}

const largest = (offs: readonly number[]) => Math.max(0, ...offs.map(Math.abs));
const isPrecise = ({ atRest, moving }: Followed) => largest(atRest) <= 0.1 && largest(moving) <= 0.5;

const holds = (one: Followed | string) =>
  typeof one !== "string" && isPrecise(one) && one.inDoubt === 0 && one.sure >= one.frames / 2;

function howItEnds(one: Followed | string): string {
  if (typeof one === "string") return `refused: ${one}`;
  const { frames, sure, atRest, moving, inDoubt, wrong } = one;
  const said = [`not sure in ${frames - sure} of ${frames} frames`, ...(inDoubt > 0 ? ["turns in doubt"] : [])];
  const off = `off by ${largest(atRest).toFixed(2)} at rest, ${largest(moving).toFixed(2)} in motion`;
  return [...(wrong > 0 ? [`WRONG UNSAID in ${wrong}`] : []), ...(isPrecise(one) ? [] : [off]), ...said].join("; ");
}

let wrong = 0;
say("| what, each by itself | holds to | at the next value | at the worst tried |");
say("| --- | --- | --- | --- |");
for (const axis of AXES) {
  if (!axis.name.includes(only)) continue;
  const edge = edgeOf(axis, (value) => filmAt(axis, value), holds);
  for (const { film } of edge.ends) wrong += typeof film === "string" ? 0 : film.wrong;
  say(edgeRow(axis, edge, howItEnds));
}
if (wrong > 0) {
  say(`${wrong} readings beyond the edges were wrong and not told`);
  process.exitCode = 1;
}
