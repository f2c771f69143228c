import { reading } from "../../lock/dial";
import { DialDrawing } from "../hand/dial/DialDrawing";
import type { DeviceHub } from "../hand/sources/devices/deviceHub";
import { deviceStateText } from "../hand/sources/devices/deviceStateText";
import { deviceText } from "../hand/sources/devices/deviceWords";
import type { DialDevice } from "../hand/sources/devices/dialDevice";
import { isOut } from "../hand/sources/devices/isOut";
import { DelayLine } from "../hand/sources/devices/panel/DelayLine";
import { Button } from "../parts/controls/Button";
import { Notice } from "../parts/Notice";
import type { SetupSession } from "./session/setupSession";
import { sourceLine } from "./session/sourceLines";
import { focusTask } from "./steps/StepTask";

/** The dial on the screen, as the device turns it. */
function TurnedDial({ session }: { readonly session: SetupSession }) {
  const { position } = session;
  const shown = (Math.round(10 * reading(position, session.perTurn)) / 10) % session.perTurn;
  return (
    <div className="flex flex-wrap items-center gap-5">
      <div className="dial w-[240px] cursor-default" aria-hidden="true">
        <DialDrawing
          {...{ profile: { graduations: session.perTurn, numbersIncrease: "left" }, position }}
          {...{
            ringTurn: 0,
            windUp: 0,
            surround: 0,
            pointTo: null,
            hub: null,
            isOpen: false,
            changingIndex: undefined,
          }}
        />
      </div>
      <p>
        <span className="block text-soft text-small">The screen shows</span>
        <span className="text-title font-semibold">{shown.toFixed(1)}</span>
      </p>
    </div>
  );
}

/** Whether what is not sure of a device without numbers of its own leaves its 0 in doubt too. */
const isZeroLost = ({ isZeroed }: SetupSession, { kind }: DialDevice) => isZeroed && !sourceLine(kind).hasNumbers;

interface DeviceViewProps {
  readonly device: DialDevice;
  readonly hub: DeviceHub;
  readonly session: SetupSession;
}

/** How the device is doing, with what it sees. */
export function DeviceView({ device, hub, session }: DeviceViewProps) {
  if (hub.device !== device) return null;
  return (
    <section className="stack" aria-label="Your device">
      <p role="status">Status: {deviceStateText(hub)}</p>
      {hub.trouble !== null && <Notice className="">{deviceText(hub.trouble)}</Notice>}
      {hub.doubt !== null && (
        <>
          <Notice className="">
            {deviceText(hub.doubt)} {isZeroLost(session, device) && "Set 0 again, then check again."}
          </Notice>
          <Button
            className="self-start"
            onClick={() => {
              hub.readDoubt();
              focusTask();
            }}
          >
            I have read it
          </Button>
        </>
      )}
      {isOut(hub) && session.step !== "connect" && (
        <Button
          className="primary self-start"
          onClick={() => {
            focusTask();
            void hub.connect(device);
          }}
        >
          Connect again
        </Button>
      )}
      {hub.isConnected && device.Setup !== undefined && (
        <device.Setup onAgain={() => void hub.connect(device)} isReversed={hub.isReversed} />
      )}
      {hub.source !== null && session.step !== "connect" && <TurnedDial session={session} />}
      {hub.source !== null && <DelayLine hub={hub} />}
      {hub.remark !== null && <p className="text-soft">{deviceText(hub.remark)}</p>}
    </section>
  );
}
