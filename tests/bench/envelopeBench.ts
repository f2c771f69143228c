import { PrintedDial } from "../../src/realdial/printed/printedDial";
import { ENVELOPE_AXES, type EnvelopeAxis } from "../support/film/envelopeAxes";
import { type Judged, judged } from "../support/film/judgedFilm";
import { printedFilm } from "../support/film/printedFilm";

/*
 * The edges of the envelope in which a printed dial is read, each thing by itself, by bisection on films of 320 x 240: the last
 * value at which a film holds (errors of at most 0.1 at rest and 0.5 in motion, nine frames in ten read, no turn in doubt), and how
 * it ends at the next and at the worst one. There it must be told: a turn that is miscounted unsaid fails the command.
 *
 *   npm run bench:envelope
 *   npm run bench:envelope -- tilt 3     only what has that in its name, with another seed
 */

const [, , only = "", seed = "7"] = process.argv;

const say = (line: string) => process.stdout.write(`${line}\n`);

function filmAt(axis: EnvelopeAxis, value: number): Judged {
  const dial = new PrintedDial(100);
  return judged(printedFilm(axis.film(value), Number(seed)), ({ picture, at }) => dial.follow(picture, at));
}

const motionOf = ({ slow, fast }: Judged) => Math.max(slow.largest, fast.largest);
const isPrecise = (one: Judged) => one.miscounted === 0 && one.rest.largest <= 0.1 && motionOf(one) <= 0.5;
const lostOf = ({ without }: Judged) => Object.values(without).reduce((sum, one) => sum + one, 0);
const holds = (one: Judged) => isPrecise(one) && one.doubted === 0 && lostOf(one) <= one.frames / 10;

function howItEnds(one: Judged): string {
  const reasons = Object.entries(one.without).map(([reason, count]) => `${reason} in ${count} of ${one.frames} frames`);
  const said = [...reasons, ...(one.doubted > 0 ? ["turns in doubt"] : [])];
  const off = isPrecise(one)
    ? []
    : [`off by ${one.rest.largest.toFixed(2)} at rest, ${motionOf(one).toFixed(2)} in motion`];
  const wrong = one.miscounted > 0 ? [`MISCOUNTED UNSAID in ${one.miscounted} frames`] : [];
  return [...wrong, ...off, ...said].join("; ") || "read";
}

/** The last of the axis's values, counted from the good one, at which a film holds; -1 for none. */
function lastThatHolds(axis: EnvelopeAxis, valueAt: (k: number) => number, count: number): number {
  let [held, failed] = [-1, count + 1];
  while (failed - held > 1) {
    const middle = held === -1 ? 0 : failed > count ? count : (held + failed) >> 1;
    if (holds(filmAt(axis, valueAt(middle)))) held = middle;
    else failed = middle;
    if (held === count) break;
  }
  return held;
}

let miscounted = 0;
say("| what | holds to | at the next value | at the worst tried |");
say("| --- | --- | --- | --- |");
for (const axis of ENVELOPE_AXES) {
  if (!axis.name.includes(only)) continue;
  const count = Math.round(Math.abs(axis.bad - axis.good) / axis.step);
  const toward = Math.sign(axis.bad - axis.good);
  const valueAt = (k: number) => Number((axis.good + toward * k * axis.step).toFixed(3));
  const last = lastThatHolds(axis, valueAt, count);
  const ends = [Math.min(count, last + 1), count].map((k) => ({ value: valueAt(k), film: filmAt(axis, valueAt(k)) }));
  for (const { film } of ends) miscounted += film.miscounted;
  const held = last < 0 ? "nowhere" : `${valueAt(last)} ${axis.unit}`.trim();
  say(`| ${axis.name} | ${held} | ${ends.map(({ value, film }) => `${value}: ${howItEnds(film)}`).join(" | ")} |`);
}
if (miscounted > 0) {
  say(`${miscounted} readings beyond the edges were miscounted and not told`);
  process.exitCode = 1;
}
