import { Fragment } from "react";
import { Bolt, Lever } from "./boltParts";
import { KeyHole, KeyRod, keyHoleAngle } from "./ChangeKey";
import type { CutawayKey, CutawayView } from "./cutawayView";
import { DrawingFrame, type DrawnWords } from "./DrawingFrame";
import { Cam, DrivePin, FencePart, GateMark, Spindle, Wheel } from "./discs";
import { FALL } from "./leverPose";
import { gateHalfWidth } from "./outlines";
import { camAngle, flyHalfAngle, packAngles } from "./packAngles";
import { BOLT_LENGTH, HEIGHT, isMirrored, project, type Scene, spindleFront } from "./packScene";
import { useMovedDrawing } from "./useMovedDrawing";

/** How far the fence reaches behind wheel 1 and in front of the cam, in depths. */
const FENCE_BACK = 0.3;
const FENCE_FRONT = -0.06;

interface PackPictureProps {
  readonly view: CutawayView;
  readonly scene: Scene;
  readonly changeKey: CutawayKey | null;
}

/** The trade's words, written above their parts. */
const wordsOf = (scene: Scene, isNoseDown: boolean): readonly DrawnWords[] => [
  {
    at: { x: project(scene, -BOLT_LENGTH, 0, 0).x, y: 12 },
    text: isNoseDown ? "lever, its nose in the cam" : "lever, its nose on the cam",
  },
  {
    at: { x: project(scene, -12, 0, scene.count).x, y: 12 },
    anchor: "end",
    text: isNoseDown ? "fence, in every gate" : "fence",
  },
];

/** The drawing, painted from wheel 1 at the back to the bolt in front. */
export function PackPicture({ view, scene, changeKey }: PackPictureProps) {
  const hasLeft = isMirrored(view);
  const { perTurn } = view;
  const drawing = useMovedDrawing(view, scene, FALL);
  return (
    <DrawingFrame
      picture={drawing.picture}
      height={HEIGHT}
      hasLeft={hasLeft}
      words={wordsOf(scene, view.isNoseDown)}
      dial={project(scene, -108, -42, 0)}
    >
      <FencePart scene={scene} far={scene.count + FENCE_BACK} near={scene.count} />
      <Spindle scene={scene} far={scene.count + 0.2} near={scene.count} />
      {changeKey !== null && (
        <KeyRod {...{ scene, changeKey, perTurn, hasLeft }} far={scene.count + 0.15} near={scene.count} />
      )}
      <Wheels view={view} scene={scene} changeKey={changeKey} />
      <Cam scene={scene} angle={turned(camAngle(view), hasLeft)} />
      <Spindle scene={scene} far={0} near={spindleFront(scene)} />
      <FencePart scene={scene} far={0} near={FENCE_FRONT} />
      <Bolt scene={scene} ref={drawing.bolt} />
      <Lever scene={scene} ref={drawing.lever} />
      {view.wheels.map(({ wheel, isTrue }) => (
        <GateMark key={wheel} scene={scene} depth={scene.count + 1 - wheel} isTrue={isTrue} />
      ))}
    </DrawingFrame>
  );
}

/** A picture seen from the other side turns the other way. */
const turned = (angle: number, hasLeft: boolean) => (hasLeft ? -angle : angle);

/** Each wheel, and in front of it what lies between it and its driver. */
function Wheels({ view, scene, changeKey }: PackPictureProps) {
  const { wheels, perTurn } = view;
  const hasLeft = isMirrored(view);
  const angles = packAngles(view);
  return wheels.map(({ wheel, gateTolerance, freePlay, driven }, k) => {
    const depth = scene.count - k;
    const { gate, fly, pin } = angles[k] ?? { gate: 0, fly: 0, pin: 0 };
    const isDriven = driven !== null;
    return (
      <Fragment key={wheel}>
        <Wheel
          scene={scene}
          depth={depth}
          gateWidth={gateHalfWidth(gateTolerance, perTurn)}
          flyWidth={flyHalfAngle(freePlay, perTurn)}
          gateAngle={turned(gate, hasLeft)}
          flyAngle={turned(fly, hasLeft)}
          isDriven={isDriven}
        />
        {changeKey !== null && (
          <>
            <KeyHole scene={scene} depth={depth} angle={turned(keyHoleAngle(changeKey, k, perTurn), hasLeft)} />
            <KeyRod
              {...{ scene, changeKey, perTurn, hasLeft }}
              far={depth}
              near={depth - (k === wheels.length - 1 ? 0.45 : 1)}
            />
          </>
        )}
        <Spindle scene={scene} far={depth} near={depth - 1} />
        <DrivePin scene={scene} depth={depth} angle={turned(pin, hasLeft)} isDriving={isDriven} />
        <FencePart scene={scene} far={depth} near={depth - 1} />
      </Fragment>
    );
  });
}
