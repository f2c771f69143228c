import { type Rest, RestNoise } from "../../../../../realdial/motion/restNoise";
import type { ShownSighting } from "../../../../../realdial/printed/shownDial";
import { Store } from "../../../../parts/page/store";
import type { FollowAnswer } from "./followMessages";

/** So often what is found is drawn anew, ms. */
const DRAWN_EVERY = 100;
/** Frames a rate is counted over. */
const COUNTED = 60;

/** What is seen while a camera is set up. */
export class CameraView extends Store {
  /** The live picture; null while no camera is on. */
  stream: MediaStream | null = null;
  size = { width: 640, height: 480 };
  sighting: ShownSighting | null = null;
  /** The last rest of a second. */
  rest: Rest | null = null;
  /** Time to find the dial in a frame, ms. */
  took = 0;
  private noise = new RestNoise();
  private times: number[] = [];
  private drawn = Number.NEGATIVE_INFINITY;

  /** Frames a second that were followed; null while there are too few. */
  get rate(): number | null {
    const [first, last] = [this.times[0], this.times.at(-1)];
    if (first === undefined || last === undefined || this.times.length < 10) return null;
    return (1000 * (this.times.length - 1)) / (last - first);
  }

  begin(stream: MediaStream): void {
    this.stream = stream;
    this.changed();
  }

  end(): void {
    this.stream = null;
    this.sighting = null;
    this.rest = null;
    this.noise = new RestNoise();
    this.times = [];
    this.changed();
  }

  /** Takes what was found in a frame. */
  take({ sighting, took }: FollowAnswer, size: { readonly width: number; readonly height: number }): void {
    const { at, position } = sighting;
    this.sighting = sighting;
    this.size = size;
    this.took += (took - this.took) / 10;
    this.times.push(at);
    if (this.times.length > COUNTED) this.times.shift();
    const rest = position === null ? null : this.noise.take(position, at);
    this.rest = rest ?? this.rest;
    if (at - this.drawn < DRAWN_EVERY) return;
    this.drawn = at;
    this.changed();
  }
}

/** That of this page. */
export const CAMERA_VIEW = new CameraView();
