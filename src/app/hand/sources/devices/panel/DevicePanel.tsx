import { useEffect, useState } from "react";
import { Button } from "../../../../parts/controls/Button";
import { Check } from "../../../../parts/controls/Check";
import { Notice } from "../../../../parts/Notice";
import { useStore } from "../../../../parts/page/useStore";
import { DEVICE_SLOT } from "../../deviceSlot";
import type { DeviceHub } from "../deviceHub";
import { deviceStateText } from "../deviceStateText";
import { deviceText } from "../deviceWords";
import type { DialDevice } from "../dialDevice";
import { DeviceLine } from "./DeviceLine";
import { DEVICE_HUB, DEVICES } from "./devicesHere";

const LEARN_WORDS = { none: "Learn the knob", left: "Turned left", right: "Turned right" } as const;

/** What there is to do with a device that is connected. */
function Connected({ hub }: { readonly hub: DeviceHub }) {
  return (
    <div className="flex flex-wrap items-center gap-x-4 gap-y-2 mt-2">
      <Button onClick={() => hub.disconnect()}>Disconnect</Button>
      {hub.isLearned !== undefined && (
        <Button onClick={() => hub.learnOn()}>{LEARN_WORDS[hub.learning ?? "none"]}</Button>
      )}
      <Check isOn={hub.isReversed} onSwitch={(isOn) => hub.reverse(isOn)}>
        It turns the wrong way
      </Check>
      {hub.watch.hasNumbers !== undefined && (
        <Check isOn={hub.watch.hasNumbers} onSwitch={(isOn) => hub.watch.setNumbers(isOn)}>
          My knob shows numbers
        </Check>
      )}
    </div>
  );
}

/** How long the hand takes to the screen, looked at every second. */
function DelayLine({ hub }: { readonly hub: DeviceHub }) {
  const [summary, setSummary] = useState(hub.delays);
  useEffect(() => {
    const timer = setInterval(() => setSummary(hub.delays), 1000);
    return () => clearInterval(timer);
  }, [hub]);
  if (summary === null) return <p className="text-soft">Hand to screen: turn the dial to measure it.</p>;
  const [middle, most] = [summary.middle, summary.most].map((delay) => Math.round(delay));
  return (
    <p className="text-soft">
      Hand to screen: {middle} ms, 95 of 100 moves within {most} ms.
    </p>
  );
}

/** How the device that was asked for is doing, and its setup. */
function DeviceState({ device, hub }: { readonly device: DialDevice; readonly hub: DeviceHub }) {
  return (
    <>
      <p role="status">Status: {deviceStateText(hub)}</p>
      {hub.trouble !== null && <Notice>{deviceText(hub.trouble)}</Notice>}
      {hub.source !== null && <DelayLine hub={hub} />}
      {hub.isConnected && device.Setup !== undefined && <device.Setup onAgain={() => void hub.connect(device)} />}
      {hub.remark !== null && <p className="text-soft">{deviceText(hub.remark)}</p>}
    </>
  );
}

function DeviceRow({ device, hub }: { readonly device: DialDevice; readonly hub: DeviceHub }) {
  const isIn = hub.device === device;
  const unsupported = device.unsupported();
  return (
    <li className="mt-4">
      <h3>{device.title}</h3>
      <p className="text-soft">{device.about}</p>
      {device.Needs !== undefined && <device.Needs perTurn={DEVICE_SLOT.dial?.perTurn ?? 100} />}
      {unsupported !== null && <p className="text-soft">{deviceText(unsupported)}</p>}
      {isIn && <DeviceState device={device} hub={hub} />}
      {isIn && (hub.isOpening || hub.isConnected) ? (
        <Connected hub={hub} />
      ) : (
        <Button
          className="mt-2"
          disabled={unsupported !== null || hub.isOpening}
          aria-label={`Connect: ${device.title}`}
          onClick={() => void hub.connect(device)}
        >
          Connect
        </Button>
      )}
    </li>
  );
}

/** Chooses a device for the hand, connects it, and learns it where it has to be learned. */
export function DevicePanel() {
  const hub = useStore(DEVICE_HUB);
  useEffect(() => {
    DEVICE_SLOT.show(DeviceLine);
    return () => DEVICE_HUB.leaveSetup();
  }, []);
  return (
    <ul className="plain">
      {DEVICES.map((device) => (
        <DeviceRow key={device.kind} device={device} hub={hub} />
      ))}
    </ul>
  );
}
