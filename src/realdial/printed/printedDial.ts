import type { GrayImage } from "../image/grayImage";
import type { Sighting, SightReason } from "../motion/sighting";
import { TurnCount } from "../motion/turnCount";
import { type AbsoluteAngle, absoluteAngle } from "./absoluteAngle";
import { DiscReader, type DiscSeen } from "./discReader";
import { MarkerFinder } from "./markerFinder";
import { SheetFollower } from "./sheetFollower";

/** Margins of half chi² from which an angle is sure: without and with what was expected. */
const SURE = 7;
/** For so long, ms, what was expected may help to choose between angles that fit alike. */
const TRUSTED_MS = 600;
/** A reading is given when its standard deviation is smaller, graduations. */
const LARGEST_SPREAD = 0.25;

const REASONS: Readonly<Record<Exclude<DiscSeen["kind"], "read">, SightReason>> = {
  lost: "disc-lost",
  covered: "disc-covered",
  blurred: "too-fast",
};

/** Follows a printed dial through the frames of a camera. */
export class PrintedDial {
  private readonly graduations: number;
  private readonly finder = new MarkerFinder();
  private readonly count = new TurnCount();
  private disc = new DiscReader();
  private sheet: SheetFollower | null = null;
  private offset = 0;
  private isInDoubt = false;
  private surely_ms = Number.NEGATIVE_INFINITY;

  /** @param graduations - of a turn */
  constructor(graduations: number) {
    this.graduations = graduations;
  }

  /** Takes the next frame. @param at_ms - when it was captured, later than the last */
  follow(image: GrayImage, at_ms: number): Sighting {
    const sheet = this.sheetIn(image);
    if (sheet === null) return this.noSight(at_ms, "no-sheet");
    const seen = this.disc.read(image, sheet.view, this.count.speedNow);
    if (seen.kind !== "read") return this.noSight(at_ms, REASONS[seen.kind]);
    const angle = this.angleOf(seen, at_ms);
    if (angle === null) return this.noSight(at_ms, "ambiguous");
    const { turns, isInDoubt } = this.count.take(angle.turns + seen.correction, at_ms);
    this.isInDoubt ||= isInDoubt;
    if (this.count.isSteady) this.disc.turnedAt(this.count.speedNow);
    const isFine = angle.spread * this.graduations < LARGEST_SPREAD;
    return {
      at: at_ms,
      position: isFine ? (turns + this.offset) * this.graduations : null,
      sight: isFine ? "sure" : "not-sure",
      reason: isFine ? "none" : "too-fast",
      turnsInDoubt: this.isInDoubt,
    };
  }

  private sheetIn(image: GrayImage): SheetFollower | null {
    if (this.sheet?.follow(image)) return this.sheet;
    const view = this.finder.find(image);
    if (view === null) return null;
    if (this.sheet === null) this.disc = new DiscReader();
    const sheet = new SheetFollower(view);
    for (let k = 0; k < 3; k++) if (!sheet.follow(image)) return null;
    this.sheet = sheet;
    return sheet;
  }

  /** The angle that is sure; null where more than one fits. */
  private angleOf({ phases }: Extract<DiscSeen, { kind: "read" }>, at_ms: number): AbsoluteAngle | null {
    const alone = absoluteAngle(phases, null);
    if (alone.margin >= SURE) {
      this.surely_ms = at_ms;
      return alone;
    }
    if (at_ms - this.surely_ms > TRUSTED_MS) return null;
    const helped = absoluteAngle(phases, this.count.expected(at_ms));
    return helped.margin >= SURE ? helped : null;
  }

  private noSight(at_ms: number, reason: SightReason): Sighting {
    return { at: at_ms, position: null, sight: "no-sight", reason, turnsInDoubt: this.isInDoubt };
  }
}
