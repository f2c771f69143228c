import { useEffect, useState } from "react";
import { Select } from "../../../../parts/controls/Select";
import { cameraId, camerasHere, chooseCamera } from "./openCamera";

interface CameraChoiceProps {
  readonly stream: MediaStream;
  readonly onAgain: () => void;
}

/** Chooses another camera, where there is more than one. */
export function CameraChoice({ stream, onAgain }: CameraChoiceProps) {
  const [cameras, setCameras] = useState<readonly MediaDeviceInfo[]>([]);
  useEffect(() => {
    let isWanted = true;
    void camerasHere().then((found) => {
      if (isWanted) setCameras(found);
    });
    return () => {
      isWanted = false;
    };
  }, []);
  if (cameras.length < 2) return null;
  return (
    <label className="row">
      Camera
      <Select
        value={cameraId(stream) ?? ""}
        choices={cameras.map(({ deviceId, label }, k) => [deviceId, label || `Camera ${k + 1}`])}
        onChoice={(id) => {
          chooseCamera(id);
          onAgain();
        }}
      />
    </label>
  );
}
