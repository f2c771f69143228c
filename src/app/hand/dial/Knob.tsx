import { memo } from "react";
import { FLUTES, pointAt } from "./dialGeometry";

const RADIUS = 115;
const DEPTH = 5;

/** The rim of a fluted knob: a circle whose radius waves. */
const RIM = (() => {
  const points = Array.from({ length: 360 }, (_, degree) =>
    pointAt(RADIUS + DEPTH * Math.cos((FLUTES * degree * Math.PI) / 180), degree),
  );
  return `M${points.join("L")}Z`;
})();

/** All ribs as one path: they are drawn three times over. */
const RIBS = Array.from({ length: FLUTES * 3 }, (_, index) => (index * 360) / (FLUTES * 3))
  .map((angle) => `M${pointAt(RADIUS - 10, angle)}L${pointAt(RADIUS - 27, angle)}`)
  .join("");

/** The body of a knob with its fluted rim. */
export const KnobBody = memo(function KnobBody() {
  return <path strokeWidth={3} d={RIM} />;
});

/** The ribs one grips. */
export const KnobRibs = memo(function KnobRibs() {
  return <path className="stroke-(--cut-rib)" strokeWidth={3} strokeLinecap="round" d={RIBS} />;
});
