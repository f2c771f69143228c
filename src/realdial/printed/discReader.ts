import type { GrayImage } from "../image/grayImage";
import { TRACKS } from "../sheet/design";
import type { TrackPhase } from "./absoluteAngle";
import { LocalLight } from "./localLight";
import { RowDelay } from "./rowDelay";
import { Seating } from "./seating";
import { TrackReader } from "./trackPhase";
import { type MovingPoint, shiftOfHeight, type View } from "./view";
import { Wobble } from "./wobble";

/** Rings seen worse than this are not the disc's. */
const LEAST_SHARE = 0.12;
const LARGEST_SCATTER_MM = 0.3;
/** So many bad frames, and the disc is looked for again. */
const PATIENCE = 3;
/**
 * A track counts with this share of the contrast it has at rest. Blur over more than a cycle turns black and white round,
 * with at most 0.22 of the contrast (the side lobe of sin x / x): such a reading would be wrong by half a cycle.
 */
const LEAST_CONTRAST = 0.36;

/** A disc that wobbles by more than this, as a tangent, is off by more than a tenth of a graduation, by films. */
const LARGEST_WOBBLE = 0.065;
/** Under a camera less aslant than this, as a tangent, a wobble hardly shows, and hardly matters. */
const ASLANT = 0.15;

/** What is seen of the disc in a frame. */
export type DiscSeen =
  | { readonly kind: "lost" | "covered" | "blurred" }
  | {
      readonly kind: "read";
      readonly phases: readonly TrackPhase[];
      readonly wobbles: boolean;
    };

/** Reads the tracks of the disc, once it is known how the base sheet lies. */
export class DiscReader {
  readonly seating = new Seating();
  readonly light = new LocalLight();
  private readonly readers = TRACKS.map((track) => new TrackReader(track));
  /** Contrast of each track at rest, learned. */
  private readonly usual = TRACKS.map(() => 0.5);
  private readonly delay = new RowDelay();
  private readonly wobble = new Wobble();
  /** Of height, in the last frame. */
  private shift: MovingPoint = { x: 0, y: 0 };
  private badFrames = PATIENCE;

  /**
   * Looks at the next frame.
   *
   * @param speed - turns/s, left positive, that are expected
   * @returns phases, the finest first
   */
  read(image: GrayImage, view: View, speed: number): DiscSeen {
    if (!this.seat(image, view)) return { kind: "lost" };
    this.light.follow(image, view, this.seating);
    if (this.light.share < 0.15) return { kind: "covered" };
    const twist = this.delay.twistAt(speed);
    const phases = this.readers.flatMap((reader, k): TrackPhase[] => {
      reader.look(image, view, this.seating, this.light);
      const phase = reader.read(twist);
      if (phase === null || phase.amplitude < LEAST_CONTRAST * this.learned(k, phase.amplitude)) return [];
      return [{ ...phase, cycles: reader.track.cycles }];
    });
    if (phases.length === 0) return { kind: "blurred" };
    this.shift = shiftOfHeight(view);
    return { kind: "read", phases, wobbles: this.wobblesTooMuch(this.shift) };
  }

  /** What a wobble takes from an angle (turns) that the last frame's tracks show. */
  wobbleAt(turns: number): number {
    const [, , , along = 0, aslant = 0] = this.seating.values;
    return this.wobble.take(along, aslant, this.shift, turns);
  }

  /** Tells at which speed (turns/s) the disc turned steadily in the last frame: so the camera's row delay is learned. */
  turnedAt(speed: number): void {
    const [finest] = this.readers;
    if (finest !== undefined) this.delay.learn(speed, (twist) => finest.sharpnessAt(twist));
  }

  /** Whether the camera reads its picture too slowly for a disc that turns so fast, turns/s. */
  isTooFast(speed: number): boolean {
    return this.delay.isTooLongAt(speed);
  }

  /** Whether how the camera reads its picture, which is not known yet, may put the last frame's reading at such a speed (turns/s) wrong. */
  isUncertainAt(speed: number): boolean {
    const rows = this.readers.map((reader) => reader.middleRow);
    return this.delay.isInDoubtAt(speed, Math.max(...rows.map(Math.abs)));
  }

  private seat(image: GrayImage, view: View): boolean {
    if (this.badFrames >= PATIENCE) this.seating.search(image, view);
    this.seating.follow(image, view);
    const isGood = this.seating.share >= LEAST_SHARE && this.seating.scatter <= LARGEST_SCATTER_MM;
    this.badFrames = isGood ? 0 : this.badFrames + 1;
    return isGood;
  }

  private learned(track: number, amplitude: number): number {
    const usual = Math.max(this.usual[track] as number, Math.min(1.2, amplitude));
    this.usual[track] = 0.999 * usual + 0.001 * Math.min(usual, 0.5);
    return usual;
  }

  /** The rings are drawn out by half of slant times wobble. @param shift - of height, as seen */
  private wobblesTooMuch({ x, y }: MovingPoint): boolean {
    const [, , , along = 0, aslant = 0] = this.seating.values;
    const slant = Math.hypot(x, y);
    return slant > ASLANT && (2 * Math.hypot(along, aslant)) / slant > LARGEST_WOBBLE;
  }
}
