import { memo } from "react";

const FLUTES = 15;
const RADIUS = 115;
const DEPTH = 5;

/** The rim of a fluted knob: a circle whose radius waves. */
const RIM = (() => {
  const points = Array.from({ length: 360 }, (_, degree) => {
    const angle = (degree * Math.PI) / 180;
    const radius = RADIUS + DEPTH * Math.cos(FLUTES * angle);
    return `${(radius * Math.sin(angle)).toFixed(2)} ${(-radius * Math.cos(angle)).toFixed(2)}`;
  });
  return `M${points.join("L")}Z`;
})();

const RIBS = Array.from({ length: FLUTES * 3 }, (_, index) => (index * 360) / (FLUTES * 3));

/** The body of a knob with its fluted rim. */
export const KnobBody = memo(function KnobBody() {
  return <path strokeWidth={3} d={RIM} />;
});

/** The ribs one grips. */
export const KnobRibs = memo(function KnobRibs() {
  return RIBS.map((angle) => (
    <line
      key={angle}
      className="stroke-(--cut-rib)"
      strokeWidth={3}
      strokeLinecap="round"
      y1={-RADIUS + 10}
      y2={-RADIUS + 27}
      transform={`rotate(${angle})`}
    />
  ));
});
