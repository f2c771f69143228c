import * as z from "zod/mini";
import type { Taps } from "../../../../../realdial/ordinary/pose/poseSearch";
import { recallText, rememberText } from "../deviceMemory";

/** The two marks on a picture. */
export const MARK_NAMES = ["middle", "index"] as const;
export type MarkName = (typeof MARK_NAMES)[number];

const part = z.number().check(z.gte(0), z.lte(1));
const point = z.object({ x: part, y: part });
const marksSchema = z.object({ middle: point, index: point });

/** Where the marks lie, in parts of the picture from its upper left corner: middle of the knob, tip of the index. */
export type Marks = Readonly<Record<MarkName, { readonly x: number; readonly y: number }>>;

/** Where they lie until someone moves them. */
export const FIRST_MARKS: Marks = { middle: { x: 0.5, y: 0.5 }, index: { x: 0.5, y: 0.15 } };

const keyOf = (camera: string | undefined) => `dial-marks-${camera ?? "camera"}`;

/** Where the marks lay last before this camera; null where that is not known. @param camera - as the browser names it */
export function rememberedMarks(camera: string | undefined): Marks | null {
  try {
    return marksSchema.safeParse(JSON.parse(recallText(keyOf(camera)) ?? "null")).data ?? null;
  } catch {
    return null;
  }
}

/** Remembers where the marks lie before this camera: no more than these four numbers, and nothing of the picture. */
export function keepMarks(camera: string | undefined, marks: Marks): void {
  rememberText(keyOf(camera), JSON.stringify(marks));
}

const within = (value: number) => Math.min(1, Math.max(0, value));

/** The same marks with one of them elsewhere, within the picture. */
export const withMark = (marks: Marks, name: MarkName, x: number, y: number): Marks => ({
  ...marks,
  [name]: { x: within(x), y: within(y) },
});

/** The mark that is nearest to a place of a picture. @param aspect - its width by its height */
export function nearestMark(marks: Marks, x: number, y: number, aspect: number): MarkName {
  const far = (name: MarkName) => Math.hypot((marks[name].x - x) * aspect, marks[name].y - y);
  return far("middle") <= far("index") ? "middle" : "index";
}

/** Marks as taps in pixels: the middle of the upper left pixel is (0, 0). */
export function tapsOf(marks: Marks, { width, height }: { readonly width: number; readonly height: number }): Taps {
  const tap = ({ x, y }: Marks[MarkName]) => ({ x: x * width - 0.5, y: y * height - 0.5 });
  return { middle: tap(marks.middle), index: tap(marks.index) };
}

/** A step of the arrow keys, in parts of the picture; with Shift. */
const STEP = 0.005;
const LARGE_STEP = 0.05;

const ARROWS: Readonly<Record<string, readonly [right: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Where an arrow key moves a mark; null for another key. */
export function movedByKey(marks: Marks, name: MarkName, key: string, isLarge: boolean): Marks | null {
  const arrow = ARROWS[key];
  if (arrow === undefined) return null;
  const step = isLarge ? LARGE_STEP : STEP;
  return withMark(marks, name, marks[name].x + arrow[0] * step, marks[name].y + arrow[1] * step);
}
