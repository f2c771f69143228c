import { errorsOf, ProblemError, problemsOf, type Words } from "../wording/problem";

/** What can be wrong with a packed motion; full sentences. */
export const MOTION_WORDS = {
  "bad-trace": ": This motion cannot be read: {why:placed}.",
  "trace-damaged": ": it is damaged",
  "trace-format": ": it is of format {format}, and this version of Gatefall reads format {latest}",
  "trace-length": ": its length does not fit",
  "trace-length-none": ": a length in it is not a number",
  "trace-longer": ": it is longer than {most} bytes",
  "trace-move-missing": ": a move is missing",
  "trace-not-base64": ": it is not written in base64",
  "trace-not-text": ": it is not a text",
  "trace-number-missing": ": a number is missing",
  "trace-number-none": ": a number in it is not one",
  "trace-too-long": ": it is too long",
  "trace-too-short": ": it is too short",
  "traces-too-large": ": The motions of this file unpack to far more than its size.",
  "motion-beyond": ": A position of this motion lies beyond 1e9 graduations, or is not a number.",
  "motion-times": ": This motion needs one time for each position, or none at all.",
  "motion-times-fall": ": The times of this motion go backward, or one is not a number.",
  "motion-too-long": ": This motion is too long to be saved.",
} as const satisfies Words;

/** Problems of a motion. */
export const motionProblem = problemsOf(MOTION_WORDS);

/** A motion that cannot be read or packed. */
export class MotionError extends ProblemError {
  override readonly name: string = "MotionError";
  protected override readonly words: Words = MOTION_WORDS;
}

/** Makes the errors of a motion. */
export const motionError = errorsOf(MOTION_WORDS, MotionError);

/** Codes of what is wrong inside a packed motion, that need no value. */
type TraceCode = Extract<keyof typeof MOTION_WORDS, `trace-${string}`>;

/** A packed motion that is none. */
export const unreadable = (code: Exclude<TraceCode, "trace-format" | "trace-longer">): MotionError =>
  motionError("bad-trace", [], { why: motionProblem(code, []) });
