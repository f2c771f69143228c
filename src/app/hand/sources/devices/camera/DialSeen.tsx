import { DEVICE_SLOT } from "../../deviceSlot";
import { deviceText } from "../deviceWords";
import type { DeviceSetupProps } from "../dialDevice";
import { CameraChoice } from "./CameraChoice";
import type { CameraView } from "./cameraView";
import { FoundDial } from "./FoundDial";
import { LivePicture } from "./LivePicture";
import { noiseText, PRIVACY, positionText, rateText } from "./setupText";
import { sightHint } from "./sightProblem";

/** What is found in the picture. It says nothing that the sentences below it do not say. */
export function Found({ view: { sighting, size } }: { readonly view: CameraView }) {
  return (
    <svg
      className="absolute inset-0 w-full h-full"
      viewBox={`0 0 ${size.width} ${size.height}`}
      aria-hidden="true"
      focusable="false"
    >
      {sighting?.shown && <FoundDial shown={sighting.shown} isSure={sighting.sight === "sure"} />}
    </svg>
  );
}

interface DialSeenProps extends DeviceSetupProps {
  readonly view: CameraView;
}

/** What a camera sees of a dial that it follows, and whether it is good enough. */
export function DialSeen({ view, onAgain, isReversed }: DialSeenProps) {
  if (view.stream === null) return null;
  const perTurn = DEVICE_SLOT.dial?.perTurn ?? 100;
  const hint = sightHint(view.sighting?.shown ?? null);
  return (
    <div className="mt-2">
      <LivePicture stream={view.stream}>
        <Found view={view} />
      </LivePicture>
      <CameraChoice stream={view.stream} onAgain={onAgain} />
      <p>{PRIVACY}</p>
      <p className="text-soft">{positionText(view.sighting, perTurn, isReversed)}</p>
      {view.sighting?.position != null && hint !== null && <p>{deviceText(hint)}</p>}
      <p className="text-soft">{rateText(view.rate, view.took)}</p>
      <p className="text-soft">{noiseText(view.rest, perTurn)}</p>
    </div>
  );
}
