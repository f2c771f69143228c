import { Button } from "../../../../parts/controls/Button";
import { Notice } from "../../../../parts/Notice";
import { useStore } from "../../../../parts/page/useStore";
import { deviceStateText } from "../deviceStateText";
import { deviceText } from "../deviceWords";
import { DEVICE_HUB } from "./devicesHere";

/** Below the dial: which device turns it, what keeps it from that, and what the hand must know before it goes on. */
export function DeviceLine() {
  const hub = useStore(DEVICE_HUB);
  const { device } = hub;
  if (device === null) return null;
  return (
    <div className="w-full flex flex-wrap items-center justify-center gap-x-4 gap-y-2">
      <p className="text-small text-soft" role="status">
        {device.title}: {deviceStateText(hub)}
      </p>
      {hub.trouble !== null && <Notice className="">{deviceText(hub.trouble)}</Notice>}
      {!hub.isConnected && !hub.isOpening && <Button onClick={() => void hub.connect(device)}>Connect again</Button>}
      {hub.doubt !== null && (
        <>
          <Notice className="">{deviceText(hub.doubt)}</Notice>
          <Button onClick={() => hub.readDoubt()}>I have read it</Button>
        </>
      )}
    </div>
  );
}
