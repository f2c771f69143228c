import { arrow, circle, dial, drawing, label, mark, path } from "./parts";

/** Four times onto a number: a spiral that passes the index three times and stops the fourth. */
export const Arrivals = drawing(
  path(
    "line",
    "M60 40A5 5 0 0 0 60 52A10 10 0 0 0 60 32A14 14 0 0 0 60 60A18 18 0 0 0 60 24A22 22 0 0 0 60 68A26.5 26.5 0 0 0 60 15",
  ),
  path("soft", "M60 6V42"),
  circle("fill", 60, 40, 2.6),
  circle("fill", 60, 32, 2.6),
  circle("fill", 60, 24, 2.6),
  circle("dot", 60, 15, 4.4),
  label(75, 14, "stop"),
);

/** A run that ends in a stop on the number. */
export const Stop = drawing(
  dial({ cy: 50, r: 32 }),
  mark({ cy: 50, r: 33, degrees: 0 }),
  arrow({ cy: 50, r: 39, from: 75, to: 6 }),
  circle("dot", 60, 21, 3.6),
);

/** How far a stop is from its number. */
export const StopError = drawing(
  path("line", "M8 56H112"),
  path("soft", "M20 56V44M40 56V44M80 56V44M100 56V44"),
  path("strong", "M60 56V28"),
  circle("dot", 86, 56, 4.4),
  path("accent", "M61 70H85M65 66L61 70L65 74M81 66L85 70L81 74"),
  label(60, 22, "number"),
);

/** Past the number, and back again: the wheel does not come back with the dial. */
export const CameBack = drawing(
  path("strong", "M60 10V80"),
  path("accent", "M12 30H90M84 25L90 30L84 35"),
  path("dash", "M90 30C104 30 104 58 90 58H64M70 53L64 58L70 63"),
  circle("fill", 90, 30, 4),
);

/** Left and right, as you face the dial. */
export const Turning = drawing(
  dial({ cy: 52, r: 24 }),
  arrow({ cy: 52, r: 34, from: -8, to: -75 }),
  arrow({ cy: 52, r: 34, from: 8, to: 75 }),
  label(16, 18, "left"),
  label(103, 18, "right"),
);

/** Round and round one way. */
export const SpinOff = drawing(
  arrow({ r: 38, from: 0, to: 300 }),
  arrow({ r: 28, from: 0, to: 300 }),
  arrow({ r: 18, from: 0, to: 300 }),
  circle("fill", 60, 45, 4),
);

/** The dial turned on, and the bolt drawn back by it. */
export const Draw = drawing(
  dial({ cx: 36, cy: 50, r: 25 }),
  arrow({ cx: 36, cy: 50, r: 32, from: -40, to: 60 }),
  path("plate", "M74 40H112V60H74Z"),
  path("accent", "M108 74H80M86 69L80 74L86 79"),
);

/** Lost motion: the dial turns a little before the cam does. */
export const LostMotion = drawing(
  path("plate", "M20 30H100V44H20Z"),
  path("fill", "M48 50H60V72H48Z"),
  path("strong", "M40 44V66M80 44V66"),
  path("accent", "M61 58H79M75 54L79 58L75 62"),
  label(60, 22, "dial"),
  label(54, 84, "cam"),
);

/** Stops close together, and stops far apart. */
export const Spread = drawing(
  path("line", "M10 34H110M10 70H110"),
  circle("dot", 55, 34, 3.6),
  circle("dot", 61, 34, 3.6),
  circle("dot", 66, 34, 3.6),
  circle("dot", 28, 70, 3.6),
  circle("dot", 62, 70, 3.6),
  circle("dot", 98, 70, 3.6),
  path("soft", "M28 56H98M28 52V60M98 52V60"),
);
