import { arrow, at, circle, dial, drawing, label, mark, path, ticks, wheel } from "./parts";

const END_OF_FLY = at(60, 45, 30, 35);

/** A dial with its numbers. */
export const Dial = drawing(
  dial({ r: 34 }),
  label(60, 23, "0"),
  label(83, 49, "25"),
  label(60, 74, "50"),
  label(37, 49, "75"),
);

/** The step from one line to the next. */
export const Graduation = drawing(
  path("soft", "M16 64V40M38 64V40M60 64V30M82 64V40M104 64V40"),
  path("line", "M8 64H112"),
  path("accent", "M61 74H81M65 70L61 74L65 78M77 70L81 74L77 78"),
);

/** A dial ring with both marks. */
export const Indexes = drawing(
  circle("plate", 60, 47, 40),
  dial({ cy: 47, r: 30 }),
  mark({ cy: 47, r: 31, degrees: 0 }),
  mark({ cy: 47, r: 31, degrees: -45, kind: "accent" }),
);

/** Dial, door, spindle, wheels and cam from the side. */
export const Spindle = drawing(
  path("fill", "M12 22H22V68H12Z"),
  path("soft", "M34 8V82M52 8V82"),
  path("strong", "M22 45H104"),
  path("line", "M66 20V70M78 20V70M90 20V70"),
  path("accent", "M102 26V64"),
);

/** The drive cam with its notch. */
export const DriveCam = drawing(
  wheel({ r: 34, gate: 25 }),
  path("strong", "M60 45V20"),
  circle("fill", 60, 45, 6),
  arrow({ r: 41, from: 60, to: 120 }),
);

/** One wheel with its gate. */
export const Wheel = drawing(wheel({ r: 36, gate: 40 }), path("accent", "M100 12L87 21M94 12L87 21L88 13"));

/** Wheels in a row, each with the pin that drives the next. */
export const WheelPack = drawing(
  path("strong", "M8 45H112"),
  path("plate", "M22 14H32V76H22ZM50 14H60V76H50ZM78 14H88V76H78Z"),
  path("accent", "M34 28H48M62 28H76M90 28H104"),
  label(27, 88, "1"),
  label(55, 88, "2"),
  label(83, 88, "3"),
);

/** A fly: a small piece that a pin pushes a little before the wheel follows. */
export const Fly = drawing(
  circle("plate", 60, 45, 36),
  path("strong", `M60 45L${END_OF_FLY.x} ${END_OF_FLY.y}`),
  circle("fill", 60, 19, 4),
  arrow({ r: 26, from: -60, to: -14 }),
  circle("line", 60, 45, 5),
);

/** Wheels out of line: the fence rests on a rim. */
export const Fence = drawing(
  wheel({ cx: 44, cy: 56, r: 28, gate: 70 }),
  wheel({ cx: 52, cy: 56, r: 28, gate: 20 }),
  path("fill", "M28 20H68V27H28Z"),
  path("accent", "M92 18V40M87 34L92 40L97 34"),
);

/** The nose of the lever above the notch of the cam. */
export const LeverNose = drawing(
  wheel({ cx: 48, cy: 60, r: 28, gate: 0 }),
  path("fill", "M44 14H112V23H54V34H44Z"),
  circle("line", 106, 18.5, 3),
  path("accent", "M30 22V42M25 36L30 42L35 36"),
);

/** Gates in line below the fence. */
export const Gate = drawing(
  wheel({ cy: 56, r: 31, gate: 0 }),
  path("fill", "M56 12H64V33H56Z"),
  path("accent", "M80 14V32M75 26L80 32L85 26"),
);

/** A bolt that goes into its strike. */
export const Strike = drawing(
  path("plate", "M6 20H58V70H6Z"),
  path("fill", "M40 36H80V54H40Z"),
  path("strong", "M72 14V34H92V56H72V76"),
  path("soft", "M66 10V80"),
);

/** The dial comes up against something solid. */
export const PositiveStop = drawing(
  circle("plate", 60, 47, 30),
  ticks({ cy: 47, r: 30 }),
  path("strong", "M88 20L104 36M84 24L88 20"),
  arrow({ cy: 47, r: 37, from: -50, to: 40 }),
);
