import { useEffect, useRef } from "react";
import { useStore } from "../../../../parts/page/useStore";
import { deviceText } from "../deviceWords";
import type { DeviceSetupProps } from "../dialDevice";
import { CameraChoice } from "./CameraChoice";
import { CAMERA_VIEW, type CameraView } from "./cameraView";
import { FoundDial } from "./FoundDial";
import { checkText, noiseText, positionText, rateText } from "./setupText";
import { sightHint } from "./sightProblem";

/** The live picture, and what is found drawn over it. It says nothing that the sentences below it do not say. */
function Picture({ view: { stream, sighting, size } }: { readonly view: CameraView }) {
  const place = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    const video = place.current;
    if (video === null) return;
    video.srcObject = stream;
    return () => {
      video.srcObject = null;
    };
  }, [stream]);
  return (
    <div className="relative max-w-[480px] bg-well" aria-hidden="true">
      <video className="block w-full" ref={place} autoPlay muted playsInline tabIndex={-1} />
      <svg
        className="absolute inset-0 w-full h-full"
        viewBox={`0 0 ${size.width} ${size.height}`}
        aria-hidden="true"
        focusable="false"
      >
        {sighting?.shown && <FoundDial shown={sighting.shown} isSure={sighting.sight === "sure"} />}
      </svg>
    </div>
  );
}

/** What the camera sees of the printed dial, and whether it is good enough. */
export function CameraSetup({ onAgain }: DeviceSetupProps) {
  const view = useStore(CAMERA_VIEW);
  if (view.stream === null) return null;
  const hint = sightHint(view.sighting?.shown ?? null);
  return (
    <div className="mt-2">
      <Picture view={view} />
      <CameraChoice stream={view.stream} onAgain={onAgain} />
      <p>Pictures never leave this device and are not stored.</p>
      <p className="text-soft">{positionText(view.sighting)}</p>
      {view.sighting?.position != null && hint !== null && <p>{deviceText(hint)}</p>}
      <p className="text-soft">{rateText(view.rate, view.took)}</p>
      <p className="text-soft">{noiseText(view.rest)}</p>
      <p role="status">{checkText(view.isAtRest ? view.rest : null)}</p>
    </div>
  );
}
