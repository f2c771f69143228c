import { mkdirSync, renameSync } from "node:fs";
import { dirname } from "node:path";
import { BROWSER_SWITCHES, browserPath } from "../../browser/browserPath";
import { Camcorder, type Picture } from "./camcorder";
import type { Shooting } from "./film";
import { type PrintedConditions, printedFilm } from "./printedFilm";
import { writeY4m } from "./y4m";

/** Frames a second where nothing else is asked: few, since a busy machine has to show them all. */
const FEW_FRAMES = 15;

/** Options of a browser whose camera plays a film, again and again from when it is turned on. */
export const cameraPlaying = (file: string) => ({
  executablePath: browserPath() ?? "",
  args: [
    ...BROWSER_SWITCHES,
    "--use-fake-ui-for-media-stream",
    "--use-fake-device-for-media-stream",
    `--use-file-for-fake-video-capture=${file}`,
  ],
});

/** Pictures of a film; one for each rest, so that films of long rests are made quickly. */
function* pictures({ scene, sensor, motion, graduations, chance }: Shooting, framesPerSecond: number) {
  const turns = (at: number) => motion.positionAt(at) / graduations;
  const camcorder = new Camcorder({ ...scene, turns }, sensor, chance);
  const frame = 1000 / framesPerSecond;
  let rested: { readonly turns: number; readonly picture: Picture } | null = null;
  for (let at = frame; at < motion.durationMs; at += frame) {
    const isAtRest = turns(at - frame) === turns(at);
    const picture: Picture = isAtRest && rested?.turns === turns(at) ? rested.picture : camcorder.pictureAt(at);
    rested = isAtRest ? { turns: turns(at), picture } : null;
    yield picture;
  }
}

/** Films a dial into a file for such a camera, whole or not at all: another may play it by now. @returns frames written */
export function shootInto(file: string, shooting: Shooting, framesPerSecond = FEW_FRAMES): number {
  mkdirSync(dirname(file), { recursive: true });
  const shot = `${file}.${process.pid}`;
  const written = writeY4m(shot, pictures(shooting, framesPerSecond), framesPerSecond);
  renameSync(shot, file);
  return written;
}

/** Films a printed dial. @returns how many frames were written */
export const filmInto = (
  file: string,
  conditions: PrintedConditions,
  seed: number,
  framesPerSecond = FEW_FRAMES,
): number => shootInto(file, printedFilm(conditions, seed), framesPerSecond);
