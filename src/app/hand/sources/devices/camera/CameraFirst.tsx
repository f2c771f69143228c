import { useState } from "react";
import { Select } from "../../../../parts/controls/Select";
import { type CameraSide, chooseCamera, chooseSide, lastCamera, sideAsked } from "./openCamera";
import { cameraChoices, useCameras } from "./useCameras";

const SIDES: readonly (readonly [CameraSide, string])[] = [
  ["environment", "The one that looks away from you"],
  ["user", "The one that looks at you"],
];

/**
 * Which camera is to be turned on, before one is. A browser names its cameras once it has let this page use one; until then only
 * the side can be chosen.
 */
export function CameraFirst() {
  const cameras = useCameras();
  const [id, setId] = useState(lastCamera() ?? "");
  const [side, setSide] = useState(sideAsked());
  if (cameras.length === 1) return null;
  if (cameras.length === 0)
    return (
      <>
        <label className="row">
          Camera
          <Select
            value={side}
            choices={SIDES}
            onChoice={(chosen) => {
              chooseSide(chosen);
              setSide(chosen);
            }}
          />
        </label>
        <p className="text-soft text-small">
          The browser lists your cameras once it has let this page use one. You can change the camera then.
        </p>
      </>
    );
  const known = cameras.some(({ deviceId }) => deviceId === id) ? id : (cameras[0]?.deviceId ?? "");
  return (
    <label className="row">
      Camera
      <Select
        value={known}
        choices={cameraChoices(cameras)}
        onChoice={(chosen) => {
          chooseCamera(chosen);
          setId(chosen);
        }}
      />
    </label>
  );
}
