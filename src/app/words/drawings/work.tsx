import { circle, drawing, label, mark, path, ticks, wheel } from "./parts";

/** A key with a winged bit. */
export const ChangeKey = drawing(
  circle("plate", 22, 45, 14),
  path("strong", "M36 45H108"),
  path("fill", "M84 45H104V60H94V53H84Z"),
  path("fill", "M84 45H104V36H84Z"),
);

/** The dial's zero under the index. */
export const Zero = drawing(
  circle("plate", 60, 70, 48),
  ticks({ cx: 60, cy: 70, r: 48, count: 40, from: 3, length: 6 }),
  mark({ cx: 60, cy: 70, r: 49, degrees: 0, length: 12 }),
  path("accent", "M63.800 22.100L62.800 34"),
  label(66, 46, "0"),
);

/** A bolt held back by a slide. */
export const Holdback = drawing(
  path("plate", "M10 34H70V56H10Z"),
  path("strong", "M86 12V78"),
  path("fill", "M42 18H56V40H42Z"),
  path("dash", "M72 45H84"),
  path("accent", "M49 6V16"),
);

/** A door, and the way out that always works. */
export const Egress = drawing(
  path("plate", "M44 10H86V80H44Z"),
  path("strong", "M50 46H66"),
  path("line", "M14 80H112"),
  circle("fill", 24, 38, 5),
  path("line", "M24 44V62L18 78M24 62L30 78M24 50H38"),
  path("accent", "M92 46H112M106 41L112 46L106 51"),
);

/** A list with checks and a line to sign. */
export const Record = drawing(
  path("plate", "M32 6H88V84H32Z"),
  path("soft", "M52 22H80M52 36H80M52 50H80"),
  path("accent", "M39 22L42 25L47 18M39 36L42 39L47 32M39 50L42 53L47 46"),
  path("line", "M40 74H80"),
  path("line", "M44 72C48 62 52 76 56 68C60 64 60 74 68 70"),
);

/** A range that reaches over the mark: nothing is shown yet. */
export const NotShown = drawing(
  path("line", "M10 60H110"),
  path("strong", "M70 24V70"),
  path("accent", "M36 44H94M36 38V50M94 38V50"),
  circle("dot", 64, 44, 4),
  label(70, 18, "pass mark"),
);

/** Three openings in a row, with the door open. */
export const Proof = drawing(
  path("plate", "M10 10H40V80H10Z"),
  path("line", "M40 10L58 20V88L40 80"),
  path("accent", "M72 26L77 32L88 18M72 50L77 56L88 42M72 74L77 80L88 66"),
);

/** Gates a little wider than what falls into them. */
export const Tolerance = drawing(
  path("plate", "M6 80V44H38V66H82V44H114V80Z"),
  path("fill", "M50 12H70V60H50Z"),
  path("accent", "M39 54H49M43 51L39 54L43 57M81 54H71M77 51L81 54L77 57"),
);

/** Cam and spindle held together by a key in a groove. */
export const SplineKey = drawing(
  wheel({ r: 36, gate: 90 }),
  circle("plate", 60, 45, 15),
  path("dot", "M56 26H64V36H56Z"),
);

/** A gap all round between dial and ring. */
export const Clearance = drawing(
  circle("plate", 60, 45, 40),
  circle("dash", 60, 45, 33),
  circle("plate", 60, 45, 26),
  path("accent", "M60 19V12"),
);
