import type { Graduations } from "../../../lock/dial";

/** Shortest time between two clicks, seconds: a spun dial must not buzz. */
const CLICK_GAP = 0.012;

/** One struck sound: a short burst that rings down. */
interface Strike {
  /** Hertz. */
  readonly pitch: number;
  /** Seconds until it has died away. */
  readonly decay: number;
  readonly loudness: number;
  readonly shape: OscillatorType;
}

const CLICK: Strike = { pitch: 2300, decay: 0.012, loudness: 0.05, shape: "square" };
const TEN: Strike = { pitch: 1500, decay: 0.02, loudness: 0.08, shape: "square" };
const NOSE: Strike = { pitch: 150, decay: 0.16, loudness: 0.5, shape: "triangle" };
const STOP: Strike = { pitch: 85, decay: 0.24, loudness: 0.6, shape: "triangle" };
const THROW: Strike = { pitch: 210, decay: 0.12, loudness: 0.35, shape: "triangle" };

const TONE = { decay: 0.13, loudness: 0.25, shape: "sine" } as const;

/** The lock is open: three rising tones after the thud of the stop, hertz. */
const OPENED = [392, 523, 784];

/** Hertz, one after the other: rising counts, falling does not, three rising close a side. */
const TUNES = { accepted: [620, 830], refused: [330, 247], closed: [620, 830, 1240] } as const;

/** Sounds of a dial and its lock, made on the spot. Made ready by the first sound, since browsers want a gesture first. */
class DialSound {
  private context: AudioContext | null = null;
  private lastClick = 0;

  /** Clicks where the dial passed a graduation. */
  turned(from: Graduations, to: Graduations): void {
    const [before, mark] = [Math.floor(from), Math.floor(to)];
    if (before === mark) return;
    const context = this.ready();
    if (context.currentTime - this.lastClick < CLICK_GAP) return;
    this.lastClick = context.currentTime;
    const passedTen = Math.floor(before / 10) !== Math.floor(mark / 10);
    strike(context, passedTen ? TEN : CLICK);
  }

  /** The bolt meets the positive stop, and the lock is open. */
  opened(): void {
    const context = this.ready();
    strike(context, STOP);
    for (const [k, pitch] of OPENED.entries()) strike(context, { ...TONE, pitch }, STOP.decay / 2 + k * TONE.decay);
  }

  /** The bolt is thrown again. */
  thrown(): void {
    strike(this.ready(), THROW);
  }

  /** The lever nose falls into the cam. */
  noseDropped(): void {
    strike(this.ready(), NOSE);
  }

  /** A reading of the zero counted, did not count, or closed its side: told apart by the tune, not by loudness. */
  readingTold(told: "accepted" | "refused" | "closed"): void {
    const context = this.ready();
    for (const [k, pitch] of TUNES[told].entries()) strike(context, { ...TONE, pitch }, k * TONE.decay);
  }

  private ready(): AudioContext {
    this.context ??= new AudioContext();
    if (this.context.state === "suspended") void this.context.resume();
    return this.context;
  }
}

/** The page's own. */
export const dialSound = new DialSound();

function strike(context: AudioContext, { pitch, decay, loudness, shape }: Strike, after = 0): void {
  const now = context.currentTime + after;
  const tone = new OscillatorNode(context, { type: shape, frequency: pitch });
  const gain = new GainNode(context, { gain: loudness });
  gain.gain.setValueAtTime(loudness, now);
  gain.gain.exponentialRampToValueAtTime(0.0001, now + decay);
  tone.connect(gain).connect(context.destination);
  tone.start(now);
  tone.stop(now + decay);
}
