import * as z from "zod/mini";
import { fieldProblem } from "../../lock/fieldProblem";
import { drillProblem } from "../drillWords";
import type { Sheet, Station } from "../sheet/sheet";
import { stationProfile } from "../sheet/stationProfile";
import { SheetError } from "../sheetError";

const seconds = z.number().check(z.positive());
const text = z.string().check(z.minLength(1));

const timesSchema = z.strictObject({
  /** Says what the times are. */
  note: text,
  number_s: seconds,
  drawAndSpinOff_s: seconds,
  zeroing_s: seconds,
  change_s: seconds,
  trouble_s: seconds,
  handover_s: seconds,
  fitting_s: seconds,
  service_s: seconds,
  inspection_s: seconds,
  question_s: seconds,
});

const courseSchema = z.strictObject({
  version: z.literal(1),
  times: timesSchema,
  lessons: z.array(
    z.strictObject({
      /** Title of a sheet. */
      sheet: text,
      teaches: text,
      /** SHA-256 of what counted in the sheet before: whoever finished that one has done the lesson. */
      earlier: z.optional(z.array(text)),
    }),
  ),
});

/** Seconds that a beginner takes for each kind of work: estimates. */
type TryTimes = Readonly<z.infer<typeof timesSchema>>;

/** One lesson: a sheet, with what it teaches and about how long it takes. */
export interface Lesson {
  /** Counted from 1. */
  readonly number: number;
  readonly sheet: Sheet;
  /** One line. */
  readonly teaches: string;
  /** Estimated working time, whole minutes. */
  readonly minutes: number;
  /** SHA-256 of what counted in its sheet in earlier versions, as good as the sheet for having done it. */
  readonly earlier?: readonly string[] | undefined;
}

function secondsATry(station: Station, times: TryTimes): number {
  if (station.kind === "handover" && station.fit === "first") return times.fitting_s + times.handover_s;
  if (station.kind !== "dialing") return times[`${station.kind}_s`];
  const numbers = station.upTo ?? stationProfile(station).procedure.length;
  return numbers * times.number_s + times.drawAndSpinOff_s;
}

/** From here on a minute more or less says nothing: the estimate goes in steps of five. */
const EXACT_BELOW = 10;
const STEP = 5;

/**
 * About how long a sheet takes a beginner.
 *
 * @param times - estimates, seconds
 * @returns whole minutes, rounded up; from 10 on in steps of 5
 */
export function lessonMinutes({ stations, sitting }: Sheet, times: TryTimes): number {
  const tries = stations.reduce((sum, one) => sum + one.repetitions * secondsATry(one, times), 0);
  const questions = (sitting?.questions?.topics ?? []).reduce((sum, { count }) => sum + count, 0);
  const minutes = Math.ceil((tries + questions * times.question_s) / 60);
  return minutes < EXACT_BELOW ? minutes : STEP * Math.ceil(minutes / STEP);
}

/**
 * Reads the table of a course.
 *
 * @param value - parsed JSON
 * @param sheets - those that its lessons may name, by title
 * @throws {SheetError} naming the field or the lesson
 */
export function parseCourse(value: unknown, sheets: readonly Sheet[]): readonly Lesson[] {
  const parsed = courseSchema.safeParse(value);
  if (!parsed.success) throw new SheetError(fieldProblem(parsed.error.issues, value), "course");
  const { lessons, times } = parsed.data;
  return lessons.map(({ sheet: title, teaches, earlier }, index) => {
    const sheet = sheets.find((one) => one.title === title);
    if (sheet === undefined) {
      throw new SheetError(drillProblem("unknown-lesson", [], { lesson: index + 1, title }), "course");
    }
    return { number: index + 1, sheet, teaches, minutes: lessonMinutes(sheet, times), ...(earlier && { earlier }) };
  });
}
