import type { Camera } from "./camera";
import { PAPER_DIAL } from "./ordinaryDial";
import { GRIPS, type OrdinaryFilm } from "./ordinaryFilm";
import type { Light } from "./scene";

/** What is unusual about a film of an ordinary dial, and how fast the hand turns at most, graduations a second. */
export interface OrdinaryRow {
  readonly film?: Partial<Omit<OrdinaryFilm, "motion" | "chance" | "dropped" | "isBlack">>;
  readonly fastest?: number;
  /** What happens only while the dial is followed, and not at set-up. */
  readonly later?: Pick<OrdinaryFilm, "dropped" | "isBlack" | "fingers" | "sensor">;
}

/** The middle of a picture of 420 by 315 pixels. */
const CAMERA = { width: 300, height: 270, focal: 400, tilt: 20, tiltFrom: 270, k1: -0.1 };
const GLARE: Light["gloss"] = { x: 0.1, y: -0.25, width: 0.25, strength: 0.4 };
const DIM = { exposureMs: 25, readNoise: 2, shotNoise: 3, moments: 8 } as const;

/** A camera that shakes: so many millimeters and thousandths of a radian, at some 2 and 3 times a second. */
export const shaken =
  (mm: number, mrad: number): NonNullable<Camera["shake"]> =>
  (at) => ({
    x: mm * Math.sin(at / 90),
    y: 0.8 * mm * Math.sin(at / 130),
    z: mm * Math.sin(at / 210),
    pitch: (mrad / 1000) * Math.sin(at / 70),
    yaw: (mrad / 1000) * Math.cos(at / 110),
    roll: (mrad / 1000) * Math.sin(at / 150),
  });

/** A dial as it usually is, what the rows differ from. */
export const USUAL: Omit<OrdinaryFilm, "motion" | "chance"> = {
  camera: CAMERA,
  radius: 100,
  fingers: GRIPS.fromBelow,
};

const from = (camera: Partial<Camera>) => ({ ...CAMERA, ...camera });

/** Films of an ordinary dial under conditions that have a name: rows of the table. */
export const ORDINARY_ROWS: Readonly<Record<string, OrdinaryRow>> = {
  "usual, hand from below": {},
  "hand from the right": { later: { fingers: GRIPS.fromRight } },
  fingertips: { later: { fingers: GRIPS.tips } },
  "tilt 35": { film: { camera: from({ tilt: 35, tiltFrom: 240 }) } },
  glare: { film: { light: { gloss: GLARE } } },
  "low contrast": { film: { look: { face: 90, ink: 150 } } },
  "paper dial": { film: { look: PAPER_DIAL } },
  "shadow edge, light from one side": {
    film: { light: { slopeX: 0.5, slopeY: 0.2, shadow: { x: 8, y: 8, side: 30, soft: 8, depth: 0.5 } } },
  },
  "dim, exposure 25 ms": { film: { sensor: DIM, light: { strength: () => 0.4 } } },
  "camera shaken": { film: { camera: from({ shake: shaken(0.5, 1.5) }) } },
  "camera hand-held": { film: { camera: from({ shake: shaken(3, 8) }) } },
  "radius 150": { film: { radius: 150, camera: from({ width: 450, height: 405, focal: 600 }) } },
  "radius 90": { film: { radius: 90, camera: from({ width: 270, height: 243, focal: 360 }) } },
  "radius 60": { film: { radius: 60, camera: from({ width: 200, height: 180, focal: 240 }) } },
  "radius 45": { film: { radius: 45, camera: from({ width: 160, height: 140, focal: 180 }) } },
  "lens -0.2, off the middle": { film: { camera: from({ k1: -0.2, focal: 320, aim: { x: 8, y: -4 } }) } },
  "rolling shutter 20 ms": { film: { sensor: { readoutMs: 20 } } },
  "conical face 4 mm": { film: { disc: { cone: 4 } } },
  "wobble 1 degree, off center 0.3 mm": { film: { disc: { wobble: 1, offCenter: { x: 0.3, y: 0 } } } },
  "60 graduations": { film: { look: { graduations: 60, numbered: 5 } }, fastest: 120 },
  "worst at once": {
    film: {
      camera: from({ tilt: 32, tiltFrom: 240, shake: shaken(0.5, 1.5) }),
      light: { strength: () => 0.35, gloss: GLARE, slopeX: 0.5 },
      sensor: { ...DIM, exposureMs: 16, readoutMs: 15 },
      disc: { cone: 2 },
    },
  },
  "worst at once, paper": {
    film: {
      camera: from({ tilt: 32, tiltFrom: 240, shake: shaken(0.5, 1.5) }),
      look: PAPER_DIAL,
      light: { strength: () => 0.35, gloss: GLARE, slopeX: 0.5 },
      sensor: { ...DIM, exposureMs: 16, readoutMs: 15 },
      disc: { cone: 2 },
    },
  },
  "60 frames a second, 4 turns/s": { film: { framesPerSecond: 60, sensor: { moments: 8 } }, fastest: 400 },
  "30 % dropped, 5 turns/s": { fastest: 500, later: { dropped: 0.3, sensor: { moments: 8 } } },
  "black for 0.8 s in 4 s, 3 turns/s": { fastest: 300, later: { isBlack: (at) => at % 4000 > 3170 } },
  "15 frames a second": { film: { framesPerSecond: 15 } },
  "a fist covers more than half": { later: { fingers: GRIPS.fist } },
};
