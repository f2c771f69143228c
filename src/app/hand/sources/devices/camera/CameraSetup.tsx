import { useStore } from "../../../../parts/page/useStore";
import type { DeviceSetupProps } from "../dialDevice";
import { CAMERA_VIEW } from "./cameraView";
import { DialSeen } from "./DialSeen";

/** What the camera sees of the printed dial, and whether it is good enough. */
export function CameraSetup(props: DeviceSetupProps) {
  const view = useStore(CAMERA_VIEW);
  return <DialSeen view={view} {...props} />;
}
