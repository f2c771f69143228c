import { type GrayImage, sampleAt } from "../image/grayImage";
import { INNER_GAP, INNER_RING, OUTER_GAP, OUTER_RING, type Ring } from "../sheet/design";
import type { Seating } from "./seating";
import { type MovingPoint, project, type View } from "./view";

/** Sectors for which black and white are known each by itself. */
export const SECTORS = 120;

const middleOf = ({ inner, outer }: Ring) => (inner + outer) / 2;

/** Radii at which black and white are looked at: black and white of the outer ring, of the inner ring. */
const RADII = [OUTER_RING, OUTER_GAP, INNER_RING, INNER_GAP].map(middleOf);
const OUTER_AT = middleOf(OUTER_GAP);
const INNER_AT = middleOf(INNER_GAP);

/** Below this difference of levels nothing is made out. */
const FAINTEST = 10;

/**
 * What is black and white in each sector of the disc, by the plain rings outside and inside the tracks. Where a finger
 * lies, the rings are not seen; where a shadow lies, black and white are darker alike.
 */
export class LocalLight {
  /** For each sector whether both rings are seen. */
  readonly isClear = new Uint8Array(SECTORS);
  /** Share of the sectors that are clear. */
  share = 0;
  private readonly levels = new Float64Array(4 * SECTORS);
  /** Contrast of the rings, difference to sum, where they are well seen: ink, paper and lens, learned. */
  private usualContrast = 0;

  /** Takes the light from a frame. */
  follow(image: GrayImage, view: View, seating: Seating): void {
    this.measure(image, view, seating);
    const contrasts = Array.from(this.isClear, (_, sector) => this.contrastIn(sector));
    const seen = contrasts.filter((one) => one > 0).sort((one, other) => one - other);
    const good = seen[Math.floor(0.8 * seen.length)] ?? 0;
    this.usualContrast += (good - this.usualContrast) * (good > this.usualContrast ? 0.3 : 0.02);
    const least = 0.6 * Math.min(this.usualContrast, good);
    const isRing = contrasts.map((one) => one > least && one > 0.12);
    let count = 0;
    for (let sector = 0; sector < SECTORS; sector++) {
      const before = isRing[(sector + SECTORS - 1) % SECTORS];
      const after = isRing[(sector + 1) % SECTORS];
      const isClear = isRing[sector] && before && after;
      this.isClear[sector] = isClear ? 1 : 0;
      if (isClear) count++;
    }
    this.share = count / SECTORS;
  }

  /** Brightness as a share of the way from black to white at a radius (mm) in a sector. */
  normalized(level: number, radius: number, sector: number): number {
    const { levels } = this;
    const out = (radius - INNER_AT) / (OUTER_AT - INNER_AT);
    const at = 4 * sector;
    const black = (levels[at] as number) * out + (levels[at + 2] as number) * (1 - out);
    const white = (levels[at + 1] as number) * out + (levels[at + 3] as number) * (1 - out);
    return (level - black) / (white - black);
  }

  private measure(image: GrayImage, view: View, seating: Seating): void {
    const point: MovingPoint = { x: 0, y: 0 };
    for (let sector = 0; sector < SECTORS; sector++) {
      for (let ring = 0; ring < 4; ring++) {
        let sum = 0;
        for (let k = -1; k <= 1; k++) {
          const angle = (2 * Math.PI * (sector + 0.5 + k / 3)) / SECTORS;
          seating.place(RADII[ring] as number, Math.sin(angle), Math.cos(angle), point);
          project(view, point.x, point.y, point);
          sum += sampleAt(image, point.x, point.y);
        }
        this.levels[4 * sector + ring] = sum / 3;
      }
    }
  }

  /** The weaker contrast of both rings in a sector; 0 where one is not seen. */
  private contrastIn(sector: number): number {
    const at = 4 * sector;
    let least = 1;
    for (let ring = 0; ring < 4; ring += 2) {
      const black = this.levels[at + ring] as number;
      const white = this.levels[at + ring + 1] as number;
      if (!(white - black > FAINTEST)) return 0;
      least = Math.min(least, (white - black) / (white + black));
    }
    return least;
  }
}
