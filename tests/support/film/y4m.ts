import { closeSync, openSync, writeSync } from "node:fs";
import type { Picture } from "./camcorder";

/** Grays as video has them: 16 to 235. */
const NARROW = Uint8Array.from({ length: 256 }, (_, gray) => Math.round(16 + (gray * 219) / 255));

/**
 * Writes a film for the fake camera of a browser (`--use-file-for-fake-video-capture`), which plays it again and again.
 *
 * @returns how many frames were written
 */
export function writeY4m(file: string, pictures: Iterable<Picture>, framesPerSecond: number): number {
  const out = openSync(file, "w");
  let written = 0;
  try {
    for (const picture of pictures) {
      if (written === 0)
        writeSync(out, `YUV4MPEG2 W${picture.width} H${picture.height} F${framesPerSecond}:1 Ip A1:1 C420jpeg\n`);
      writeSync(out, "FRAME\n");
      writeSync(out, y4mFrame(picture));
      written++;
    }
  } finally {
    closeSync(out);
  }
  return written;
}

/** A picture's grays, then colors at half the size: none. */
function y4mFrame({ width, height, data }: Picture): Uint8Array {
  const colors = 2 * Math.ceil(width / 2) * Math.ceil(height / 2);
  const frame = new Uint8Array(width * height + colors).fill(128);
  for (let i = 0; i < data.length; i++) frame[i] = NARROW[data[i] ?? 0] ?? 0;
  return frame;
}
