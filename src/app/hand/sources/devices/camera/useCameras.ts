import { useEffect, useState } from "react";
import { camerasHere } from "./openCamera";

/** The cameras that are there, as long as the browser tells; looked for anew where one is plugged in. */
export function useCameras(): readonly MediaDeviceInfo[] {
  const [cameras, setCameras] = useState<readonly MediaDeviceInfo[]>([]);
  useEffect(() => {
    const ending = new AbortController();
    const look = async () => {
      const found = await camerasHere();
      if (!ending.signal.aborted) setCameras(found);
    };
    void look();
    navigator.mediaDevices?.addEventListener("devicechange", look, ending);
    return () => ending.abort();
  }, []);
  return cameras;
}

/** Each camera with its words. */
export const cameraChoices = (cameras: readonly MediaDeviceInfo[]) =>
  cameras.map(({ deviceId, label }, k) => [deviceId, label || `Camera ${k + 1}`] as const);
