import * as z from "zod/mini";
import table from "../../shared/fitting.json" with { type: "json" };
import type { Problem } from "../wording/problem";
import { rulesOf, strict } from "./fieldSchemas";
import { LOCK_WORDS, lockProblem } from "./lockWords";
import type { Profile, SizeName } from "./profile";

type Sizes = Readonly<Record<SizeName, number>>;
const NAMES = Object.keys(table.sizes) as readonly SizeName[];

const sizeRule = rulesOf(LOCK_WORDS);

/** A size as the table bounds it; what is wrong with one says its name in words. */
function sizeSchema(size: SizeName) {
  const { name, unit, least: low, most: high } = table.sizes[size];
  const isCount = unit === "count";
  const plain = { name, low, high };
  const other = unit === "share" ? sizeRule("size-share", plain) : sizeRule("size", { ...plain, unit });
  const rule = isCount ? sizeRule("size-count", plain) : other;
  const bounded = z.number(rule).check(z.gte(low, rule), z.lte(high, rule));
  return isCount ? bounded.check(z.int(rule)) : bounded;
}

/** Schema of the sizes that a profile may give of its fit; what each may be is told in `shared/fitting.json`. */
export const fittingSchema = strict(
  Object.fromEntries(NAMES.map((name) => [name, z.optional(sizeSchema(name))])) as {
    readonly [Name in SizeName]: z.ZodMiniOptional<ReturnType<typeof sizeSchema>>;
  },
);

const MM_PER_INCH = 25.4;
/** Two flat washers and a spring go into any lock. */
const FLATS = 2;

const lead = ({ threadsPerInch }: Sizes) => MM_PER_INCH / threadsPerInch;

function areWashersRight(sizes: Sizes): boolean {
  const { flat_mm, springFree_mm, springFlat_mm, room_mm, springRate_N_mm, frictionFlat, gripGive_N } = sizes;
  const pressed_mm = FLATS * flat_mm + springFree_mm - room_mm;
  const ahead = (frictionFlat * springRate_N_mm * pressed_mm) / gripGive_N;
  return pressed_mm >= 0 && FLATS * flat_mm + springFlat_mm <= room_mm && ahead <= 1;
}

interface Rule {
  readonly code: "gap-narrow" | "spindle-reach" | "screw-order" | "hole-small" | "washers-misfit";
  /** The sizes it is about. */
  readonly names: readonly SizeName[];
  readonly holds: (sizes: Sizes) => boolean;
}

const RULES: readonly Rule[] = [
  {
    code: "gap-narrow",
    names: ["threadsPerInch", "gapLeast_mm", "gapMost_mm"],
    holds: (sizes) => sizes.gapMost_mm - sizes.gapLeast_mm > lead(sizes),
  },
  {
    code: "spindle-reach",
    names: ["ring_mm", "door_mm", "plate_mm", "body_mm", "gapMost_mm", "spindle_mm"],
    holds: ({ ring_mm, door_mm, plate_mm, body_mm, gapMost_mm, spindle_mm }) =>
      spindle_mm > ring_mm + door_mm + plate_mm + body_mm + gapMost_mm,
  },
  {
    code: "screw-order",
    names: ["screwHolds_Nm", "screwStrips_Nm"],
    holds: ({ screwHolds_Nm, screwStrips_Nm }) =>
      screwStrips_Nm >= 1.6 * screwHolds_Nm && screwStrips_Nm <= 2.9 * screwHolds_Nm,
  },
  { code: "hole-small", names: ["bolt_mm", "hole_mm"], holds: ({ bolt_mm, hole_mm }) => hole_mm > bolt_mm },
  {
    code: "washers-misfit",
    names: ["frictionFlat", "gripGive_N", "springRate_N_mm", "springFlat_mm", "springFree_mm", "flat_mm", "room_mm"],
    holds: areWashersRight,
  },
];

/**
 * What no single size of a fit shows: sizes that contradict each other, or those of the training lock that stand for what is
 * left out.
 *
 * @returns the problem at a size that the profile gives, or undefined where all go together
 */
export function fittingMisfit(fitting: Profile["fitting"]): Problem | undefined {
  if (fitting === undefined) return undefined;
  const sizes = Object.fromEntries(NAMES.map((name) => [name, fitting[name] ?? table.sizes[name].value])) as Sizes;
  const broken = RULES.find(({ holds }) => !holds(sizes));
  if (broken === undefined) return undefined;
  const at = broken.names.findLast((name) => fitting[name] !== undefined) ?? "gapMost_mm";
  const { name } = table.sizes[at];
  return broken.code === "gap-narrow"
    ? lockProblem(broken.code, ["fitting", at], { name, lead: Number(lead(sizes).toFixed(3)) })
    : lockProblem(broken.code, ["fitting", at], { name });
}
