import type { Milliseconds } from "../../lock/dial";

/** How a device lies, degrees, as the browser tells it: turned by alpha about z, then by beta about x, then by gamma about y. */
export interface Attitude {
  readonly alpha: number;
  readonly beta: number;
  readonly gamma: number;
}

/** A rotation as a quaternion. */
type Rotation = readonly [w: number, x: number, y: number, z: number];

const RADIANS = Math.PI / 180;

/** Source: W3C Device Orientation and Motion, appendix on quaternions (Z-X'-Y''). */
function rotationOf({ alpha, beta, gamma }: Attitude): Rotation {
  const [x, y, z] = [beta, gamma, alpha].map((angle) => (angle * RADIANS) / 2) as [number, number, number];
  const [cX, cY, cZ] = [Math.cos(x), Math.cos(y), Math.cos(z)];
  const [sX, sY, sZ] = [Math.sin(x), Math.sin(y), Math.sin(z)];
  return [
    cX * cY * cZ - sX * sY * sZ,
    sX * cY * cZ - cX * sY * sZ,
    cX * sY * cZ + sX * cY * sZ,
    cX * cY * sZ + sX * sY * cZ,
  ];
}

/**
 * How far a device has turned about the axis that stands on its screen: the twist of the rotation between (swing and twist).
 * It serves flat on a table and upright on a door alike, where alpha alone does not.
 *
 * @returns turns, counter-clockwise as seen on the screen positive, in (-1/2, 1/2]
 */
export function twistBetween(from: Attitude, to: Attitude): number {
  const [aw, ax, ay, az] = rotationOf(from);
  const [bw, bx, by, bz] = rotationOf(to);
  const w = aw * bw + ax * bx + ay * by + az * bz;
  const z = aw * bz - az * bw - ax * by + ay * bx;
  const angle = 2 * Math.atan2(z, w);
  const turns = angle / (2 * Math.PI);
  return turns - Math.round(turns);
}

/** A sensor at rest creeps; as much of its turning is left out, turns in a second: 1.8 graduations of 100 in a minute. */
const CREEP = 0.0003;
/** At most so much of one move, turns: browsers give angles in steps of a tenth of a degree. */
const MOST_LEFT_OUT = 0.0003;
/** The drift is known after so much rest. */
const DRIFT_AFTER: Milliseconds = 5000;
/** With a longer gap between two readings the device may have gone round unseen. */
const LONGEST_GAP: Milliseconds = 500;

/**
 * Follows a phone that lies on a knob.
 *
 * Its yaw comes of a gyroscope, which creeps at rest. What is slower than a hand is left out, and told as drift; a hand loses
 * 0.03 graduations by it where it begins to turn. Mutable.
 */
export class TwistFollower {
  private last: { readonly attitude: Attitude; readonly at: Milliseconds } | null = null;
  private allowance = MOST_LEFT_OUT;
  private crept = 0;
  private rested: Milliseconds = 0;
  /** Unwrapped turns since the first reading, left positive. */
  turns = 0;

  /** How fast it creeps at rest, turns in a minute; null until it has rested long enough. */
  get driftPerMinute(): number | null {
    return this.rested < DRIFT_AFTER ? null : (this.crept / this.rested) * 60_000;
  }

  /** @returns whether it came after a gap in which it may have turned unseen */
  take(attitude: Attitude, at: Milliseconds): boolean {
    const { last } = this;
    this.last = { attitude, at };
    if (last === null) return false;
    const passed = Math.max(0, at - last.at);
    if (passed > LONGEST_GAP) return true;
    this.allowance = Math.min(MOST_LEFT_OUT, this.allowance + (CREEP * passed) / 1000);
    const by = twistBetween(last.attitude, attitude);
    const leftOut = Math.max(-this.allowance, Math.min(this.allowance, by));
    this.allowance -= Math.abs(leftOut);
    this.turns += by - leftOut;
    if (by === leftOut) {
      this.crept += by;
      this.rested += passed;
    }
    return false;
  }
}
