import { PrintedDial } from "../../src/realdial/printed/printedDial";
import { edgeOf, edgeRow } from "../support/film/edge";
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

let miscounted = 0;
say("| what | holds to | at the next value | at the worst tried |");
say("| --- | --- | --- | --- |");
for (const axis of ENVELOPE_AXES) {
  if (!axis.name.includes(only)) continue;
  const edge = edgeOf(axis, (value) => filmAt(axis, value), holds);
  for (const { film } of edge.ends) miscounted += film.miscounted;
  say(edgeRow(axis, edge, howItEnds));
}
if (miscounted > 0) {
  say(`${miscounted} readings beyond the edges were miscounted and not told`);
  process.exitCode = 1;
}
