import { useEffect, useRef } from "react";
import { Button } from "../../../../parts/controls/Button";
import { Check } from "../../../../parts/controls/Check";
import { Notice } from "../../../../parts/Notice";
import { useStore } from "../../../../parts/page/useStore";
import { DEVICE_SLOT } from "../../deviceSlot";
import type { DeviceHub } from "../deviceHub";
import { deviceStateText } from "../deviceStateText";
import { deviceText } from "../deviceWords";
import type { DialDevice } from "../dialDevice";
import { DelayLine } from "./DelayLine";
import { DeviceLine } from "./DeviceLine";
import { DEVICE_HUB, DEVICES } from "./devicesHere";
import { setupHere } from "./setupHere";

interface DeviceRowProps {
  readonly device: DialDevice;
  readonly hub: DeviceHub;
}

/** How the device that was asked for is doing, and what there is to do with it here. */
function InHand({ device, hub, onGone }: DeviceRowProps & { readonly onGone: () => void }) {
  return (
    <>
      <p role="status">Status: {deviceStateText(hub)}</p>
      {hub.trouble !== null && <Notice>{deviceText(hub.trouble)}</Notice>}
      {hub.source !== null && <DelayLine hub={hub} />}
      {hub.isConnected && device.Setup !== undefined && (
        <device.Setup onAgain={() => void hub.connect(device)} isReversed={hub.isReversed} />
      )}
      {(hub.isOpening || hub.isConnected) && (
        <div className="row mt-2">
          <Button
            onClick={() => {
              onGone();
              hub.disconnect();
            }}
          >
            Disconnect
          </Button>
          <Check isOn={hub.isReversed} onSwitch={(isOn) => hub.reverse(isOn)}>
            It turns the wrong way
          </Check>
          {hub.watch.hasNumbers !== undefined && (
            <Check isOn={hub.watch.hasNumbers} onSwitch={(isOn) => hub.watch.setNumbers(isOn)}>
              My knob shows numbers
            </Check>
          )}
        </div>
      )}
    </>
  );
}

function DeviceRow({ device, hub }: DeviceRowProps) {
  const title = useRef<HTMLHeadingElement>(null);
  // What was pressed goes: the keys stay with the device.
  const focusTitle = () => title.current?.focus();
  const isIn = hub.device === device;
  const isOut = !isIn || (!hub.isOpening && !hub.isConnected);
  const unsupported = device.unsupported();
  return (
    <li className="py-2 ruled">
      <div className="flex items-center justify-between gap-4">
        <h3 ref={title} tabIndex={-1}>
          {device.title}
        </h3>
        {isOut && unsupported === null && device.isSetUpEachTime && (
          <a className="button" href={setupHere()} aria-label={`Set up: ${device.title}`}>
            Set up
          </a>
        )}
        {isOut && unsupported === null && !device.isSetUpEachTime && (
          <Button
            disabled={hub.isOpening}
            aria-label={`Connect: ${device.title}`}
            onClick={() => {
              focusTitle();
              void hub.connect(device);
            }}
          >
            Connect
          </Button>
        )}
        {unsupported !== null && <small>Not in this browser</small>}
      </div>
      {isIn && <InHand device={device} hub={hub} onGone={focusTitle} />}
    </li>
  );
}

/** The devices in short: connects one that is set up, and leads to where one is set up and looked at. */
export function DevicePanel() {
  const hub = useStore(DEVICE_HUB);
  useEffect(() => {
    DEVICE_SLOT.show(DeviceLine);
    return () => DEVICE_HUB.leaveSetup();
  }, []);
  return (
    <>
      <p className="my-4">
        <a className="button primary" href={setupHere()}>
          {hub.isConnected ? "See and check your dial" : "Set up a dial"}
        </a>
      </p>
      <ul className="plain">
        {DEVICES.map((device) => (
          <DeviceRow key={device.kind} device={device} hub={hub} />
        ))}
      </ul>
    </>
  );
}
