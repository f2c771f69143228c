import { baseSheetSvg, discSheetSvg, PAPERS } from "../../../src/realdial/sheet/sheetSvg";
import { seeded } from "../seeded";
import type { Camera } from "./camera";
import type { Shooting } from "./film";
import { holding, type Leg, type Motion, motionOf } from "./handMotion";
import {
  type Disc,
  EVEN_LIGHT,
  type Finger,
  GOOD_SENSOR,
  type Knob,
  type Light,
  type Sensor,
  TRUE_DISC,
} from "./scene";
import { partOf, type Texture, textureOfSvg } from "./texture";

/** What a film of a printed dial can be like. What is left out is good. */
export interface PrintedConditions {
  readonly camera?: Partial<Camera>;
  /** Part of the picture's height that the base sheet takes. */
  readonly fills?: number;
  readonly disc?: Partial<Omit<Disc, "texture" | "radius">>;
  readonly baseCurl?: Disc["curl"];
  readonly knob?: Partial<Knob>;
  readonly light?: Partial<Light>;
  readonly sensor?: Partial<Sensor>;
  /** From where a hand comes, degrees, 0 from the right, 90 from above; none without it. */
  readonly handFrom?: number;
  readonly fingers?: number;
  readonly legs?: readonly Leg[];
  readonly start?: number;
  readonly restMs?: number;
  readonly graspMs?: number;
  readonly framesPerSecond?: number;
  readonly dropped?: number;
  readonly jitterMs?: number;
  readonly isBlack?: (at: number) => boolean;
}

const GRADUATIONS = 100;
const BASE_MM = 190;
const DISC_RADIUS = 70;
const TEXELS = 4;

let printed: { readonly base: Texture; readonly disc: Texture } | undefined;

/** Both sheets as they come from the printer, cut out. */
function sheets(): { readonly base: Texture; readonly disc: Texture } {
  const { width } = PAPERS.a4;
  const drawn = (svg: string) => textureOfSvg(svg.replace(/<text\b[^>]*>[^<]*<\/text>/g, ""), width, TEXELS);
  printed ??= {
    base: partOf(drawn(baseSheetSvg("a4")), { x: 0, y: 0 }, BASE_MM + 10, BASE_MM + 10),
    disc: partOf(
      drawn(discSheetSvg("a4", { graduations: GRADUATIONS, numbers: "clockwise" })),
      { x: 0, y: 0 },
      144,
      144,
    ),
  };
  return printed;
}

/** Fingers on a knob, and what comes behind them, from one side. */
function fingersFrom(degrees: number, count: number): Finger[] {
  const from = (degrees * Math.PI) / 180;
  const point = (radius: number, angle: number) => [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  const wrist = point(120, from);
  const fingers = Array.from({ length: count }, (_, k) => {
    const spread = from + 0.55 * (k - (count - 1) / 2);
    const [[fromX, fromY], [toX, toY]] = [point(20, spread), point(75, from + 0.55 * (spread - from))];
    return { fromX, fromY, toX, toY, radius: 8.5 };
  });
  const [toX, toY] = wrist;
  const [fromX, fromY] = point(78, from);
  return [...fingers, { fromX, fromY, toX, toY, radius: 34 }];
}

/** Some legs of a hand that dials: fast, slow and in between. */
export const USUAL_LEGS: readonly Leg[] = [
  { by: 3.3, speed: 8, restMs: 200 },
  { by: 130, speed: 200, restMs: 250 },
  { by: -62.4, speed: 140, restMs: 250 },
  { by: 21.7, speed: 60, restMs: 200 },
  { by: -240, speed: 220, restMs: 300 },
];

/** A film of a printed dial, made of a seed. */
export function printedFilm(conditions: PrintedConditions, seed: number): Shooting & { readonly motion: Motion } {
  const { legs = USUAL_LEGS, start = 0, restMs = 300, graspMs = 0 } = conditions;
  const { framesPerSecond = 30, dropped = 0, jitterMs = 0, isBlack } = conditions;
  const motion = motionOf(legs, { start, restMs, graspMs });
  return {
    scene: sceneOf(conditions, motion),
    sensor: { ...GOOD_SENSOR, blur: 0.6, ...conditions.sensor },
    motion,
    graduations: GRADUATIONS,
    framesPerSecond,
    dropped,
    jitterMs,
    ...(isBlack && { isBlack }),
    chance: seeded(seed),
  };
}

function sceneOf(conditions: PrintedConditions, motion: Motion): Shooting["scene"] {
  const { base, disc } = sheets();
  const { handFrom, fingers = 3, baseCurl } = conditions;
  return {
    camera: cameraOf(conditions),
    light: { ...EVEN_LIGHT, ...conditions.light },
    base: { texture: base, ...(baseCurl && { curl: baseCurl }) },
    disc: { texture: disc, radius: DISC_RADIUS, ...TRUE_DISC, ...conditions.disc },
    knob: { radius: 22, height: 26, reflectance: 0.25, flutes: 12, ...conditions.knob },
    ...(handFrom !== undefined && {
      hand: {
        fingers: fingersFrom(handFrom, fingers),
        height: 30,
        reflectance: 0.35,
        place: holding(motion, GRADUATIONS, { from: 150, wrist: 70 }),
      },
    }),
  };
}

function cameraOf({ camera, fills = 0.85 }: PrintedConditions): Camera {
  const { width = 320, height = 240 } = camera ?? {};
  const focal = camera?.focal ?? 0.95 * width;
  const distance = (focal * BASE_MM) / (height * fills);
  return {
    ...{ width, height, focal, distance, aim: { x: 0, y: 0 }, tilt: 0, tiltFrom: 270, roll: 0, k1: 0, k2: 0 },
    ...camera,
  };
}
