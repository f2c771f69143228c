import { PrintedDial } from "../../src/realdial/printed/printedDial";
import { type Errors, type Judged, judged } from "../support/film/judgedFilm";
import { type PrintedConditions, printedFilm } from "../support/film/printedFilm";
import { PRINTED_ROWS } from "../support/film/printedRows";

/*
 * The table of a printed dial followed through films: error in graduations (100 a turn), at rest, up to 0.7 turns/s, and faster.
 *
 *   npm run bench:realdial            films of 320 x 240
 *   npm run bench:realdial -- 640     films of 640 x 480
 *   npm run bench:realdial -- 320 lens     only rows with that in their name
 */

const [, , width = "320", only = ""] = process.argv;
const scale = Number(width) / 320;

const say = (line: string) => process.stdout.write(`${line}\n`);
const inWords = ({ mean, sd, largest }: Errors) => `${mean.toFixed(3)} ± ${sd.toFixed(3)} (${largest.toFixed(2)})`;

function sized(conditions: PrintedConditions): PrintedConditions {
  const { focal } = conditions.camera ?? {};
  const size = { width: 320 * scale, height: 240 * scale, ...(focal !== undefined && { focal: focal * scale }) };
  return { ...conditions, camera: { ...conditions.camera, ...size } };
}

function row(name: string, { frames, rest, slow, fast, without, miscounted, doubted, mean_ms }: Judged): string {
  const lost = Object.values(without).reduce((sum, one) => sum + one, 0);
  return `| ${name} | ${inWords(rest)} | ${inWords(slow)} | ${inWords(fast)} | ${lost} of ${frames} | ${miscounted} | ${doubted} | ${mean_ms.toFixed(1)} |`;
}

say("| film | at rest: bias ± SD (max) | slow | fast | lost | miscounted | in doubt | ms a frame |");
say("| --- | --- | --- | --- | --- | --- | --- | --- |");
for (const [name, conditions] of Object.entries(PRINTED_ROWS)) {
  if (!name.includes(only)) continue;
  const dial = new PrintedDial(100);
  say(
    row(
      name,
      judged(printedFilm(sized(conditions), 7), ({ picture, at }) => dial.follow(picture, at)),
    ),
  );
}
