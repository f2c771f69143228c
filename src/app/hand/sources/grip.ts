import { type Graduations, wrap } from "../../../lock/dial";
import { pointerAngle, pointerRadius, type ScreenPoint } from "./pointerAngle";

/** A pointer closer to the middle than this turns nothing: there a pixel would be a quarter turn. CSS pixels. */
const DEAD_RADIUS = 14;
/** A middle that moved by less than this has not moved: layouts are rounded. CSS pixels. */
const SAME_PLACE = 0.25;

/** One pointer on the dial. */
interface Hand {
  /** Where it was last seen. */
  readonly point: ScreenPoint;
  /** Which way it lies from the middle, graduations; null in the dead middle. */
  readonly angle: Graduations | null;
}

/**
 * The hands on a dial: which pointer holds it, and how far it has turned it.
 *
 * The first pointer down holds the dial; others wait, and the next one takes over, without a jump, when it lets go.
 * The farther out a pointer is, the finer it turns, as on any knob. Where the dial itself moves on the screen, the
 * hands are measured anew from its new middle: only a hand that moves turns the dial.
 */
export class Grip {
  private readonly perTurn: number;
  private readonly hands = new Map<number, Hand>();
  private center: ScreenPoint = { clientX: 0, clientY: 0 };

  /** @param perTurn - graduations in one turn of the dial, > 0 */
  constructor(perTurn: number) {
    this.perTurn = perTurn;
  }

  /** Whether any pointer holds the dial. */
  get isHeld(): boolean {
    return this.hands.size > 0;
  }

  /**
   * Says where the middle of the dial is now; call it before every move.
   *
   * @param center - CSS pixels
   */
  place(center: ScreenPoint): void {
    if (pointerRadius(center, this.center) < SAME_PLACE) return;
    this.center = center;
    for (const [id, { point }] of this.hands) this.see(id, point);
  }

  /** A pointer comes down on the dial. */
  hold(id: number, pointer: ScreenPoint): void {
    this.see(id, pointer);
  }

  /** A pointer lets go, is cancelled, or is lost. */
  release(id: number): void {
    this.hands.delete(id);
  }

  /** Every pointer is lost at once, as when the window loses the focus. */
  releaseAll(): void {
    this.hands.clear();
  }

  /**
   * A pointer moves.
   *
   * @returns how far it turns the dial, graduations, left positive; 0 where it does not hold it
   */
  turn(id: number, pointer: ScreenPoint): Graduations {
    const hand = this.hands.get(id);
    if (hand === undefined) return 0;
    const { angle } = this.see(id, pointer);
    const [holder] = this.hands.keys();
    return hand.angle === null || angle === null || id !== holder ? 0 : wrap(angle - hand.angle, this.perTurn);
  }

  private see(id: number, { clientX, clientY }: ScreenPoint): Hand {
    const point = { clientX, clientY };
    const isDead = pointerRadius(point, this.center) < DEAD_RADIUS;
    const hand: Hand = { point, angle: isDead ? null : pointerAngle(point, this.center, this.perTurn) };
    this.hands.set(id, hand);
    return hand;
  }
}
