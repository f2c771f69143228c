import { Button } from "../../../../parts/controls/Button";
import { Notice } from "../../../../parts/Notice";
import { useStore } from "../../../../parts/page/useStore";
import { focusDial } from "../../../dial/focusDial";
import { DEVICE_SLOT } from "../../deviceSlot";
import type { DeviceHub } from "../deviceHub";
import { deviceStateText } from "../deviceStateText";
import { deviceProblem, deviceText } from "../deviceWords";
import { isOut } from "../isOut";
import { shownNumber } from "../shownPlace";
import { DEVICE_HUB } from "./devicesHere";
import { StopChoice } from "./StopChoice";
import { setupHere } from "./setupHere";

/** The number that the knob is asked for, and the button that says it is there; else that it has gone on from where it is. */
function ToNumber({ hub }: { readonly hub: DeviceHub }) {
  const { dial } = DEVICE_SLOT;
  if (hub.watch.hasGoneOn) return <p role="status">{deviceText(deviceProblem("gone-on", []))}</p>;
  if (dial === undefined || !hub.watch.isAsking) return null;
  const number = shownNumber(dial);
  return (
    <>
      <Notice className="">{deviceText(deviceProblem("set-to", [], { number }))}</Notice>
      <Button
        onClick={() => {
          hub.watch.set();
          focusDial();
        }}
      >
        It shows {number}
      </Button>
    </>
  );
}

/** Below the dial, to which the keys go back as a button goes: which device turns it, what keeps it from that, and what the hand must know before it goes on. */
export function DeviceLine() {
  const hub = useStore(DEVICE_HUB);
  const { device } = hub;
  if (device === null) return null;
  const again = DEVICE_SLOT.dial?.drawn().acts.find(({ key }) => key === "r");
  return (
    <div className="w-full flex flex-wrap items-center justify-center gap-x-4 gap-y-2">
      <p className="text-small text-soft" role="status">
        {device.title}: {deviceStateText(hub)} <a href={setupHere()}>Set up</a>
      </p>
      {hub.trouble !== null && <Notice className="">{deviceText(hub.trouble)}</Notice>}
      {isOut(hub) && !device.isSetUpEachTime && (
        <Button
          onClick={() => {
            focusDial();
            void hub.connect(device);
          }}
        >
          Connect again
        </Button>
      )}
      {hub.doubt !== null && (
        <>
          <Notice className="">
            {deviceText(hub.doubt)} {hub.watch.isMarked && deviceText(deviceProblem("marked", []))}
          </Notice>
          <Button
            onClick={() => {
              hub.readDoubt();
              focusDial();
            }}
          >
            I go on
          </Button>
          {again !== undefined && (
            <Button
              onClick={() => {
                hub.readDoubt();
                again.act();
                focusDial();
              }}
            >
              Begin again
            </Button>
          )}
        </>
      )}
      <ToNumber hub={hub} />
      {hub.isConnected && <StopChoice hub={hub} />}
    </div>
  );
}
