import { type GrayImage, isTooDark } from "../image/grayImage";
import type { Sighting, SightReason } from "../motion/sighting";
import { type AbsoluteAngle, absoluteAngle } from "./absoluteAngle";
import { DiscReader, type DiscSeen } from "./discReader";
import { MarkerFinder } from "./markerFinder";
import { SheetFollower } from "./sheetFollower";
import { type ShownSighting, shownDial } from "./shownDial";
import { TurnCount } from "./turnCount";

/** Margin of half chi² from which an angle is sure. */
const SURE = 7;
/** Tracks that fit each other worse than this, in half of chi², are not all read right. */
const WORST_FIT = 5;
/** For so long after an angle that was sure by itself, ms, what was expected may help to choose between angles that fit alike. */
const TRUSTED_MS = 600;
/** A reading is given when its standard deviation is smaller, graduations. */
const LARGEST_SPREAD = 0.25;

const REASONS: Readonly<Record<Exclude<DiscSeen["kind"], "read">, SightReason>> = {
  lost: "disc-lost",
  covered: "disc-covered",
  blurred: "too-fast",
};

/**
 * Follows a printed dial through the frames of a camera. The first reading's whole turns are any: `setTo` says where the
 * dial is.
 */
export class PrintedDial {
  private readonly graduations: number;
  private readonly finder = new MarkerFinder();
  private readonly count = new TurnCount();
  private readonly disc = new DiscReader();
  private sheet: SheetFollower | null = null;
  /** Turns to add to those counted. */
  private offset = 0;
  private turns: number | null = null;
  private isInDoubt = false;
  private surely_ms = Number.NEGATIVE_INFINITY;

  /** @param graduations - of a turn */
  constructor(graduations: number) {
    this.graduations = graduations;
  }

  /** Sets what the last reading is (graduations): zero, and the count of turns after a doubt. @returns whether there was one */
  setTo(position: number): boolean {
    if (this.turns === null) return false;
    this.offset = position / this.graduations - this.turns;
    this.isInDoubt = false;
    return true;
  }

  /** Takes the next frame. @param at_ms - when its middle row was captured, later than the last */
  follow(image: GrayImage, at_ms: number): ShownSighting {
    this.turns = null;
    const { sight, reason } = this.look(image, at_ms);
    const position = this.turns === null ? null : (this.turns + this.offset) * this.graduations;
    const { sheet } = this;
    const shown = sheet === null ? null : shownDial(sheet.view, sheet.seen, this.disc.seating);
    return { at: at_ms, position, sight, reason, turnsInDoubt: this.isInDoubt, shown };
  }

  /** Looks at a frame, and sets the turns where they are sure. */
  private look(image: GrayImage, at_ms: number): Pick<Sighting, "sight" | "reason"> {
    const sheet = this.sheetIn(image);
    if (sheet === null) return { sight: "no-sight", reason: this.whyNoSheet(image) };
    const seen = this.disc.read(image, sheet.view, this.count.speedNow);
    if (seen.kind !== "read") return { sight: "no-sight", reason: REASONS[seen.kind] };
    const angle = this.angleOf(seen, at_ms);
    if (angle === null) return { sight: "no-sight", reason: "ambiguous" };
    const { turns, isInDoubt } = this.count.take(angle.turns + this.disc.wobbleAt(angle.turns), at_ms);
    this.isInDoubt ||= isInDoubt;
    if (this.count.isSteady) this.disc.turnedAt(this.count.speedNow);
    if (angle.spread * this.graduations > LARGEST_SPREAD) return { sight: "not-sure", reason: "too-fast" };
    if (seen.wobbles) return { sight: "not-sure", reason: "disc-wobbles" };
    if (this.disc.isTooFast(this.count.speedNow) || this.disc.isUncertainAt(this.count.fastest))
      return { sight: "not-sure", reason: "too-fast" };
    this.turns = turns;
    return { sight: "sure", reason: "none" };
  }

  private sheetIn(image: GrayImage): SheetFollower | null {
    if (this.sheet?.follow(image)) return this.sheet;
    const view = this.finder.find(image);
    if (view === null) return null;
    const sheet = new SheetFollower(view);
    for (let k = 0; k < 3; k++) if (!sheet.follow(image)) return null;
    this.sheet = sheet;
    return sheet;
  }

  private whyNoSheet(image: GrayImage): SightReason {
    if (isTooDark(image)) return "too-dark";
    return this.sheet === null ? "no-sheet" : "markers-covered";
  }

  /** The angle that is sure; null where more than one fits. */
  private angleOf({ phases }: Extract<DiscSeen, { kind: "read" }>, at_ms: number): AbsoluteAngle | null {
    const alone = absoluteAngle(phases, null);
    if (alone.misfit > WORST_FIT) return null;
    if (alone.margin >= SURE) {
      this.surely_ms = at_ms;
      return alone;
    }
    if (at_ms - this.surely_ms > TRUSTED_MS) return null;
    const helped = absoluteAngle(phases, this.count.expected(at_ms));
    return helped.margin >= SURE && helped.misfit <= WORST_FIT ? helped : null;
  }
}
