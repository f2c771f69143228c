import type { Milliseconds } from "../../../../lock/dial";
import type { Learned } from "../../../../realdial/knobs/learned";
import { StepRest } from "../../../../realdial/knobs/stepRest";
import { recallText, rememberText } from "./deviceMemory";
import type { DeviceLink, KnobLearner } from "./dialDevice";

/** A kind of knob that is learned by turning it. */
interface KnobKind<Sample, Knob> {
  /** Where what was learned is stored. */
  readonly key: string;
  /** Whether a sample says where it is, so that it needs the one before it; else it says how far it went. */
  readonly isPlace: boolean;
  /** What was stored, if it is such a knob. */
  readonly read: (stored: unknown) => Knob | null;
  readonly learn: (left: readonly Sample[], right: readonly Sample[]) => Learned<Knob>;
  /** Turns that a sample stands for, left positive, where the one before it is known too. */
  readonly turnsOf: (knob: Knob, sample: Sample, before: Sample | null) => number;
  /** The smallest step, turns. */
  readonly stepOf: (knob: Knob) => number;
}

const parsed = (text: string | null): unknown => {
  try {
    return text === null ? null : JSON.parse(text);
  } catch {
    return null;
  }
};

/** Follows a knob that tells steps, learns it first where it must, and remembers what it learned. */
export class SteppedKnob<Sample, Knob> implements KnobLearner {
  private readonly kind: KnobKind<Sample, Knob>;
  private readonly link: DeviceLink;
  private knob: Knob | null;
  private turns = 0;
  private rest: StepRest | null = null;
  private before: Sample | null = null;
  private learning: "left" | "right" | null = null;
  private seen: Record<"left" | "right", Sample[]> = { left: [], right: [] };

  constructor(kind: KnobKind<Sample, Knob>, link: DeviceLink) {
    this.kind = kind;
    this.link = link;
    this.knob = kind.read(parsed(recallText(kind.key)));
    this.tellReady();
  }

  get isLearned(): boolean {
    return this.knob !== null;
  }

  get isLearning(): boolean {
    return this.learning !== null;
  }

  /** What is known of it; null until it has been learned. */
  get known(): Knob | null {
    return this.knob;
  }

  begin(turn: "left" | "right"): void {
    this.learning = turn;
    this.seen[turn] = this.kind.isPlace && this.before !== null ? [this.before] : [];
  }

  finish() {
    const { left, right } = this.seen;
    const learned = this.kind.learn(left, right);
    this.learning = null;
    if ("failed" in learned) return learned.failed;
    this.knob = learned.knob;
    rememberText(this.kind.key, JSON.stringify(learned.knob));
    this.tellReady();
    return null;
  }

  /** Something came of the device. */
  take(sample: Sample, at: Milliseconds): void {
    if (this.learning !== null) this.seen[this.learning].push(sample);
    else if (this.knob !== null) this.follow(this.knob, sample, at);
    if (this.kind.isPlace) this.listen(at);
    this.before = sample;
  }

  /** The device was out of sight: the next sample is the first. */
  loseSight(): void {
    this.before = null;
  }

  private follow(knob: Knob, sample: Sample, at: Milliseconds): void {
    const by = this.kind.turnsOf(knob, sample, this.before);
    if (by === 0) return;
    this.turns += by;
    this.link.turned(this.turns, at);
  }

  /** One that says where it is may flicker at rest. */
  private listen(at: Milliseconds): void {
    const noise = this.rest?.take(this.turns, at) ?? null;
    if (noise !== null) this.link.measured(noise);
  }

  private tellReady(): void {
    if (this.knob === null) return;
    const step = this.kind.stepOf(this.knob);
    this.rest = new StepRest(step);
    this.link.ready(step);
    this.link.measured(this.rest.noise);
  }
}
