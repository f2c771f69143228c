import { memo, type Ref } from "react";
import { type BlockPlace, blockFaces } from "./blockFaces";
import { leverPath, PIVOT } from "./leverPose";
import { BOLT_LENGTH, planeTransform, type Scene } from "./packScene";

interface SolidProps {
  readonly scene: Scene;
  readonly place: BlockPlace;
  readonly kind: string;
}

/** A solid block: its front and the two faces that its depth shows. */
export function Solid({ scene, place, kind }: SolidProps) {
  const { front, top, end } = blockFaces(scene, place);
  return (
    <g className={kind}>
      <polygon className="fill-metal-3" points={end} />
      <polygon className="fill-metal-1" points={top} />
      <polygon className="fill-metal-2" points={front} />
    </g>
  );
}

const LOW = PIVOT.y - 10;
const HIGH = PIVOT.y + 10;
const BOLT: BlockPlace = { x: [-BOLT_LENGTH, PIVOT.x + 14], y: [LOW, HIGH] };
/** The wall of the case has an opening for the bolt. */
const WALL_BELOW: BlockPlace = { x: [-132, -124], y: [-48, LOW - 2], thick: 1.4 };
const WALL_ABOVE: BlockPlace = { ...WALL_BELOW, y: [HIGH + 2, 58] };

/** The bolt in the wall of the case, thrown. `ref` is the group to move. */
export const Bolt = memo(function Bolt({ scene, ref }: { scene: Scene; ref: Ref<SVGGElement> }) {
  return (
    <g>
      <Solid scene={scene} place={WALL_BELOW} kind="cutaway-wall" />
      <g ref={ref}>
        <Solid scene={scene} place={BOLT} kind="cutaway-bolt" />
      </g>
      <Solid scene={scene} place={WALL_ABOVE} kind="cutaway-wall" />
    </g>
  );
});

/** The lever, hung on the bolt, its nose over the cam. `ref` is the group to move. */
export const Lever = memo(function Lever({ scene, ref }: { scene: Scene; ref: Ref<SVGGElement> }) {
  return (
    <g transform={planeTransform(scene, 0)}>
      <g ref={ref}>
        <path className="fill-metal-1" strokeWidth={1.6} d={leverPath} />
        <circle className="fill-ink" cx={PIVOT.x} cy={-PIVOT.y} r={3.2} />
      </g>
    </g>
  );
});
