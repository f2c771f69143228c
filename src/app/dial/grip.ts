import { type Graduations, wrap } from "../../lock/dial";
import { pointerAngle, pointerRadius, type ScreenPoint } from "./pointerAngle";

/** A pointer closer to the middle than this turns nothing: there a pixel would be a quarter turn. CSS pixels. */
const DEAD_RADIUS = 14;

/**
 * The hands on a dial: which pointer holds it, and how far it has turned it.
 *
 * The first pointer down holds the dial; others wait, and the next one takes over, without a jump, when it lets go.
 * The farther out a pointer is, the finer it turns, as on any knob.
 */
export class Grip {
  private readonly angles = new Map<number, Graduations | null>();

  /** Whether any pointer holds the dial. */
  get isHeld(): boolean {
    return this.angles.size > 0;
  }

  /** A pointer comes down on the dial. */
  hold(id: number, pointer: ScreenPoint, center: ScreenPoint, perTurn: number): void {
    this.angles.set(id, angleAt(pointer, center, perTurn));
  }

  /** A pointer lets go, is cancelled, or is lost. */
  release(id: number): void {
    this.angles.delete(id);
  }

  /**
   * A pointer moves.
   *
   * @returns how far it turns the dial, graduations, left positive; 0 where it does not hold it
   */
  turn(id: number, pointer: ScreenPoint, center: ScreenPoint, perTurn: number): Graduations {
    if (!this.angles.has(id)) return 0;
    const before = this.angles.get(id) ?? null;
    const now = angleAt(pointer, center, perTurn);
    this.angles.set(id, now);
    const [holder] = this.angles.keys();
    return before === null || now === null || id !== holder ? 0 : wrap(now - before, perTurn);
  }
}

function angleAt(pointer: ScreenPoint, center: ScreenPoint, perTurn: number): Graduations | null {
  return pointerRadius(pointer, center) < DEAD_RADIUS ? null : pointerAngle(pointer, center, perTurn);
}
