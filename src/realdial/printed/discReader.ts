import type { GrayImage } from "../image/grayImage";
import { TRACKS } from "../sheet/design";
import type { TrackPhase } from "./absoluteAngle";
import { LocalLight } from "./localLight";
import { RowDelay } from "./rowDelay";
import { Seating } from "./seating";
import { TrackReader } from "./trackPhase";
import { type MovingPoint, shiftOfHeight, type View } from "./view";

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

/** A camera less aslant than the root of this, as a tangent, does not show which way a disc wobbles. */
const STRAIGHT = 0.005;
/**
 * So much of the turn that follows from the rings is seen in the tracks: by films at tilts of 15 to 35 degrees 0.8 to 1, the
 * less, the more of the disc the knob hides. Its cause is not worked out.
 */
const SHOWN = 0.9;

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
      readonly correction: number;
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
  private badFrames = PATIENCE;

  /**
   * Looks at the next frame.
   *
   * @param speed - turns/s, left positive, that are expected
   * @returns phases, the finest first, and what a wobble adds to the angle (turns)
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
    const shift = shiftOfHeight(view);
    return { kind: "read", phases, correction: this.wobble(shift), wobbles: this.wobblesTooMuch(shift) };
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

  /**
   * A disc that wobbles under a camera aslant seems turned: raised by t·u at a point u of it, it is seen moved along the
   * shift g of height, by g (t·u). The rings show the symmetric part of that map; the rest follows from g's direction. Where
   * the camera is not aslant, there is no such direction.
   */
  private wobble({ x, y }: MovingPoint): number {
    const [, , , along = 0, aslant = 0] = this.seating.values;
    const turned = (2 * x * y * along + (y * y - x * x) * aslant) / (x * x + y * y + STRAIGHT);
    return (SHOWN * turned) / (2 * Math.PI);
  }

  /** The rings are drawn out by half of slant times wobble. @param shift - of height, as seen */
  private wobblesTooMuch({ x, y }: MovingPoint): boolean {
    const [, , , along = 0, aslant = 0] = this.seating.values;
    const slant = Math.hypot(x, y);
    return slant > ASLANT && (2 * Math.hypot(along, aslant)) / slant > LARGEST_WOBBLE;
  }
}
