import * as z from "zod/mini";
import type { AttemptStart } from "../../../../../dialing/attemptStart";
import { MotionRecorder } from "../../../../../dialing/hand/motionRecorder";
import type { TimedMotion } from "../../../../../dialing/motion";
import type { Graduations, Milliseconds } from "../../../../../lock/dial";
import { graduations } from "../../../../../records/fields";
import { motionOfText, motionText } from "../../../../../records/motion/traceCodec";
import { unreadable } from "../../../../../records/motionError";

/** What a hand does in a change besides turning the dial. */
export const KEY_ACTS = ["insertKey", "turnKey", "turnKeyBack", "withdrawKey", "pressButton"] as const;
export type KeyAct = (typeof KEY_ACTS)[number];

const use = z.enum(KEY_ACTS);
/** The numbers wanted, and the dial as the hand held it when the change began, unwrapped graduations. */
const begun = { wanted: z.array(graduations), hand: graduations };

/** The motion of a kept change. @throws {MotionError} `bad-trace` for a text that is none */
export function motionOfChange(text: string): TimedMotion {
  const { start, positions, times_ms } = motionOfText(text);
  if (start === undefined || times_ms === undefined) throw unreadable("trace-number-missing");
  return { start, positions, times_ms };
}

function isMotion(text: string): boolean {
  try {
    return motionOfChange(text).positions.length >= 0;
  } catch {
    return false;
  }
}

/** How a change under way began, how the dial was turned in it, and after how many of its moves the hand did what else. */
const keptMotion = z.object({
  ...begun,
  motion: z.string().check(z.refine(isMotion)),
  acts: z.array(z.object({ use, after: z.number() })),
});

/** As version 0.2.0 kept it: moves and acts in one list, beside where the lock took dial and wheels to be at first. */
const keptDeeds = z.object({
  ...begun,
  lock: z.object({ dial: graduations, slack: z.optional(z.array(graduations)) }),
  deeds: z.array(z.union([z.object({ by: graduations, at_ms: z.number() }), z.object({ use, at_ms: z.number() })])),
});

function readDeeds({ wanted, hand, lock, deeds }: z.infer<typeof keptDeeds>): z.infer<typeof keptMotion> {
  const recording = new ChangeRecording(lock);
  for (const deed of deeds) {
    if ("use" in deed) recording.used(deed.use);
    else recording.turned(deed.by, recording.at(deed.at_ms));
  }
  return { wanted, hand, ...recording.kept };
}

/** What is kept of a change under way. */
export const keptChangeSchema = z.union([keptMotion, z.pipe(keptDeeds, z.transform(readDeeds))]);
export type KeptChange = z.infer<typeof keptChangeSchema>;

/** Records what a hand does in a change, so that it can be done again. Mutable. */
export class ChangeRecording {
  private readonly recorder: MotionRecorder;
  private readonly acts: { use: KeyAct; after: number }[] = [];
  private begunAt: Milliseconds | null = null;

  /** @param start - where the lock takes the dial and its wheels to be */
  constructor(start: AttemptStart) {
    this.recorder = new MotionRecorder(start);
  }

  get kept(): Pick<KeptChange, "motion" | "acts"> {
    return { motion: motionText(this.recorder.recording), acts: this.acts };
  }

  /** @param at_ms - by the clock of the change, `at` @returns the move as it is kept, for the lock: graduations */
  turned(by: Graduations, at_ms: Milliseconds): Graduations {
    return this.recorder.take(by, at_ms);
  }

  used(act: KeyAct): void {
    this.acts.push({ use: act, after: this.recorder.recording.positions.length });
  }

  /** What is done next comes after a reload, by another clock: it begins where the last move was. */
  reloaded(): void {
    this.begunAt = null;
  }

  /** Time since the change began, but for the time of a reload. */
  at(now: Milliseconds): Milliseconds {
    const last = this.recorder.recording.times_ms.at(-1) ?? 0;
    this.begunAt ??= now - last;
    return Math.max(last, now - this.begunAt);
  }
}
