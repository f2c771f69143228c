import { memo } from "react";
import type { BlockPlace } from "./blockFaces";
import { Bolt, Lever, Solid } from "./boltParts";
import type { CutawayView } from "./cutawayView";
import { DrawingFrame, type DrawnWords } from "./DrawingFrame";
import { Cam, Spindle } from "./discs";
import { toothedPath } from "./outlines";
import {
  BOLT_LENGTH,
  CAM_RADIUS,
  centerAt,
  corners,
  isMirrored,
  planeTransform,
  project,
  type Scene,
  spindleFront,
  THICKNESS,
  turnTransform,
  WIDTH,
} from "./packScene";
import { useMovedDrawing } from "./useMovedDrawing";

const SQUASH = 0.74;
const SCENE: Scene = {
  count: 1,
  cam: { x: 14 + BOLT_LENGTH * SQUASH, y: 94 },
  step: { x: 130, y: -8 },
  squash: SQUASH,
};
const HEIGHT = 136;
const TEETH = 24;
/** The nose enters between two teeth only. */
const FALL = 5;
const MOTOR: BlockPlace = { x: [-20, 16], y: [70, 86], thick: 2 };
/** The motor's rod, from within it down to the lever. */
const ROD = { from: project(SCENE, -3, 74, 0), to: project(SCENE, -3, 62, 0) };
const EYE: BlockPlace = { x: [-9, 9], y: [24, 54], z: 1, thick: 2.4 };
const CODE_RADIUS = 40;
const toothed = toothedPath(CAM_RADIUS, TEETH);

const AT_DISC = centerAt(SCENE, 1);
const AT_MOTOR = project(SCENE, 16, 75, 0);

const wordsOf = (isNoseDown: boolean): readonly DrawnWords[] => [
  {
    at: { x: AT_MOTOR.x + 22, y: AT_MOTOR.y },
    text: isNoseDown ? "motor lets the nose down" : "motor holds the nose up",
  },
  { at: { x: AT_DISC.x + 44, y: AT_DISC.y + 6 }, text: "encoder" },
  { at: { x: WIDTH - 38, y: HEIGHT - 10 }, anchor: "end", text: "counted" },
];

/** The drawing of an encoder lock, painted from the code disc at the back to the bolt in front. */
export function EncoderPicture({ view }: { view: CutawayView }) {
  const hasLeft = isMirrored(view);
  const drawing = useMovedDrawing(view, SCENE, FALL);
  const angle = (((view.cam.position * 360) / view.perTurn) % 360) * (hasLeft ? -1 : 1);
  return (
    <DrawingFrame
      picture={drawing.picture}
      height={HEIGHT}
      hasLeft={hasLeft}
      words={wordsOf(view.isNoseDown)}
      dial={project(SCENE, -108, -38, 0)}
    >
      <Spindle scene={SCENE} far={1.25} near={1} />
      <CodeDisc angle={angle} />
      <Reading />
      <Spindle scene={SCENE} far={1} near={0} />
      <Cam scene={SCENE} angle={angle} outline={toothed} />
      <Spindle scene={SCENE} far={0} near={spindleFront(SCENE)} />
      <line className="cutaway-falls" strokeWidth={3} x1={ROD.from.x} y1={ROD.from.y} x2={ROD.to.x} y2={ROD.to.y} />
      <Solid scene={SCENE} place={MOTOR} kind="cutaway-motor" />
      <Bolt scene={SCENE} ref={drawing.bolt} />
      <Lever scene={SCENE} ref={drawing.lever} />
    </DrawingFrame>
  );
}

const CodeDisc = memo(function CodeDisc({ angle }: { angle: number }) {
  return (
    <g>
      <g transform={planeTransform(SCENE, 1, { x: THICKNESS.x / 3, y: THICKNESS.y / 3 })}>
        <circle className="fill-metal-3" strokeWidth={1.4} r={CODE_RADIUS} />
      </g>
      <g transform={planeTransform(SCENE, 1)}>
        <circle className="fill-metal-1" strokeWidth={1.4} r={CODE_RADIUS} />
        <g transform={turnTransform(angle)}>
          <circle
            className="cutaway-slots"
            strokeWidth={9}
            strokeDasharray="1 1"
            r={CODE_RADIUS - 9}
            pathLength={100}
          />
          <path strokeWidth={1.4} d={`M0 ${5 - CODE_RADIUS}v-3`} />
          <circle className="stroke-line" strokeWidth={0.7} r={14} />
          <path strokeWidth={1.4} d="M0 -14V-24" />
        </g>
      </g>
    </g>
  );
});

/** The eye over the code disc, and the lead that takes what it sees down to the registers. */
const Reading = memo(function Reading() {
  const from = project(SCENE, 9, 40, 1);
  const x = WIDTH - 28;
  const lead = corners([from, { x, y: from.y }, { x, y: HEIGHT - 2 }]);
  return (
    <g>
      <polyline className="stroke-line" points={lead} />
      <path className="fill-line stroke-none" d={`M${x - 4} ${HEIGHT - 8}h8l-4 8Z`} />
      <Solid scene={SCENE} place={EYE} kind="cutaway-eye" />
    </g>
  );
});
