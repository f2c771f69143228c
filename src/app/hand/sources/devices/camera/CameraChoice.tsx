import { Select } from "../../../../parts/controls/Select";
import { cameraId, chooseCamera } from "./openCamera";
import { cameraChoices, useCameras } from "./useCameras";

interface CameraChoiceProps {
  readonly stream: MediaStream;
  readonly onAgain: () => void;
}

/** Chooses another camera, where there is more than one. */
export function CameraChoice({ stream, onAgain }: CameraChoiceProps) {
  const cameras = useCameras();
  if (cameras.length < 2) return null;
  return (
    <label className="row">
      Camera
      <Select
        value={cameraId(stream) ?? ""}
        choices={cameraChoices(cameras)}
        onChoice={(id) => {
          chooseCamera(id);
          onAgain();
        }}
      />
    </label>
  );
}
