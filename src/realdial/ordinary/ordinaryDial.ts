import { type GrayImage, isTooDark } from "../image/grayImage";
import type { SightReason } from "../motion/sighting";
import type { Point } from "../numerics/homography";
import type { ShownDial, ShownSighting } from "../printed/shownDial";
import { movedPoint, type Similarity, UNMOVED } from "./camera/similarity";
import { OrdinaryFollower } from "./follower";
import { type DialPose, seenOfFace } from "./pose/dialPose";
import type { Taps } from "./pose/poseSearch";
import type { OrdinaryReading } from "./reading";
import type { SetupProblem } from "./reference";
import { dialFound } from "./setup";
import type { SlowTurn } from "./slowTurn";
import { type TurnHint, TurnWatch } from "./turnWatch";

/** What a picture comes to, step by step from the taps to following. */
export type OrdinarySeen =
  /** There is no dial yet, or none any more: it has to be tapped. */
  | { readonly step: "untapped"; readonly problem: SetupProblem | null }
  /** The slow turn is under way. @property part - of a whole turn, 0 to 1 */
  | { readonly step: "turning"; readonly part: number; readonly hint: TurnHint | null; readonly shown: ShownDial }
  /** It is followed. Positions are in hundredths of a turn. */
  | { readonly step: "followed"; readonly sighting: ShownSighting };

/** Sightings count a turn as so many. */
const PER_TURN = 100;
const AROUND = 48;

/** The rim of a dial, as it is seen after the camera has moved. */
function rimOf(pose: DialPose, motion: Similarity): ShownDial {
  const rim = Array.from({ length: AROUND }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / AROUND;
    return movedPoint(motion, seenOfFace(pose, Math.cos(angle), Math.sin(angle)));
  });
  return { markers: [], rings: [rim] };
}

/** An ordinary dial before a camera, from the taps on. Mutable. */
export class OrdinaryDial {
  private turn: SlowTurn | null = null;
  private watch = new TurnWatch();
  private follower: OrdinaryFollower | null = null;
  private pose: DialPose | null = null;
  private perTurn = PER_TURN;
  /** Where it was at the last reading that was sure, graduations. */
  private position = 0;

  /**
   * Looks for a dial that rests on 0 with no hand on it; what was known of another is forgotten.
   *
   * @param graduations - of its turn
   */
  find(image: GrayImage, taps: Taps, graduations: number): OrdinarySeen {
    this.follower = null;
    this.turn = null;
    const found = dialFound(image, taps, graduations);
    if ("code" in found) return { step: "untapped", problem: found };
    this.turn = found;
    this.watch = new TurnWatch();
    this.pose = found.pose;
    this.perTurn = graduations;
    return { step: "turning", part: 0, hint: null, shown: rimOf(found.pose, UNMOVED) };
  }

  /** Takes the next picture. @param at - capture time, ms, later than the last */
  take(image: GrayImage, at: number): OrdinarySeen {
    if (this.follower !== null) return this.followed(this.follower.follow(image, at), image);
    return this.turn === null ? { step: "untapped", problem: null } : this.turned(this.turn, image);
  }

  /** Turns are no longer in doubt: where it was seen last is taken for right. */
  settle(): void {
    this.follower?.setPosition(this.position);
  }

  private turned(turn: SlowTurn, image: GrayImage): OrdinarySeen {
    turn.take(image);
    const hint = this.watch.look(image, turn);
    const shown = rimOf(turn.pose, UNMOVED);
    if (turn.part < 1) return { step: "turning", part: turn.part, hint, shown };
    const learned = turn.learned();
    this.turn = null;
    if ("code" in learned) return { step: "untapped", problem: learned };
    this.follower = new OrdinaryFollower(learned);
    this.pose = learned.pose;
    return { step: "turning", part: 1, hint: null, shown };
  }

  private followed(reading: OrdinaryReading, image: GrayImage): OrdinarySeen {
    const { at, position, sight, reason, turnsInDoubt } = reading;
    const isSure = sight === "sure" && position !== null;
    if (isSure) this.position = position;
    const sighting: ShownSighting = {
      at,
      position: isSure ? (position * PER_TURN) / this.perTurn : null,
      sight: isSure ? "sure" : "no-sight",
      reason: isSure ? "none" : this.whyNot(reason, image),
      turnsInDoubt,
      shown: this.pose === null ? null : rimOf(this.pose, reading.motion),
    };
    return { step: "followed", sighting };
  }

  private whyNot(reason: OrdinaryReading["reason"], image: GrayImage): SightReason {
    if (isTooDark(image)) return "too-dark";
    return reason ?? "ambiguous";
  }
}
