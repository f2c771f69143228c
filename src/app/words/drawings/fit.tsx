import { circle, drawing, label, path, ticks, wheel } from "./parts";

/** A key that stands out of its groove. */
export const KeySeat = drawing(
  wheel({ r: 36, gate: 180 }),
  circle("plate", 60, 45, 14),
  path("fill", "M56 25H64V36H56Z"),
  path("line", "M96 2H112V20H70"),
  path("accent", "M60 8V22M55 17L60 22L65 17"),
);

/** A ring that sits to one side of the dial in it. */
export const OffCenter = drawing(
  circle("plate", 66, 45, 40),
  circle("plate", 58, 45, 28),
  ticks({ cx: 58, cy: 45, r: 28 }),
  path("accent", "M87 45H105M91 41L87 45L91 49M101 41L105 45L101 49"),
  path("soft", "M58 40V50M53 45H63M66 40V50M61 45H71"),
);

/** A dial that moves in and out, from the side. */
export const EndPlay = drawing(
  path("plate", "M44 8H54V82H44Z"),
  path("plate", "M24 20H34V70H24Z"),
  path("dash", "M12 20H22V70H12Z"),
  path("strong", "M34 45H108"),
  path("accent", "M6 80H36M11 75L6 80L11 85M31 75L36 80L31 85"),
);

/** An eye beside the axis sees a mark elsewhere than an eye in front of it. */
export const Parallax = drawing(
  path("strong", "M84 12V78"),
  path("line", "M62 12V78"),
  path("dash", "M14 45H84"),
  path("accent", "M14 76L84 34"),
  circle("fill", 14, 45, 4),
  circle("plate", 14, 76, 4),
  label(50, 10, "dial"),
  label(98, 10, "ring"),
);

/** Washers from the cam out: two flat ones, then a spring. */
export const Washers = drawing(
  path("plate", "M10 14H24V76H10Z"),
  path("fill", "M30 24H35V66H30Z"),
  path("fill", "M42 24H47V66H42Z"),
  path("strong", "M58 24C70 34 70 56 58 66"),
  path("plate", "M82 14H96V76H82Z"),
  path("soft", "M4 45H112"),
);

/** A dial that goes in by the same way at each turn. */
export const Lead = drawing(
  path("plate", "M10 20H24V70H10Z"),
  path("strong", "M24 38H104M24 52H104"),
  path("soft", "M44 38L50 52M56 38L62 52M68 38L74 52M80 38L86 52M92 38L98 52"),
  path("accent", "M56 66H68M56 61V71M68 61V71"),
  label(62, 86, "lead"),
);
