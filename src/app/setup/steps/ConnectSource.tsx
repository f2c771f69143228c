import type { DeviceHub } from "../../hand/sources/devices/deviceHub";
import type { DialDevice } from "../../hand/sources/devices/dialDevice";
import { Button } from "../../parts/controls/Button";
import { sourceLine } from "../session/sourceLines";

interface ConnectSourceProps {
  readonly device: DialDevice;
  readonly hub: DeviceHub;
  readonly printAddress: string;
  readonly onNext: () => void;
  readonly onBack: () => void;
}

const LEARN_WORDS = { none: "Learn the knob", left: "I have turned left", right: "I have turned right" } as const;
const LEARN_TASKS = {
  none: "The page has to learn how your knob steps. Start, then turn it as you are asked.",
  left: "Turn the knob left by one whole turn. Then say so.",
  right: "Now turn it right by one whole turn. Then say so.",
} as const;

/** A knob whose steps are not known. */
function Learn({ hub }: { readonly hub: DeviceHub }) {
  const now = hub.learning ?? "none";
  return (
    <>
      <p role="status">{LEARN_TASKS[now]}</p>
      <Button className={hub.isLearned === true && now === "none" ? "" : "primary"} onClick={() => hub.learnOn()}>
        {hub.isLearned === true && now === "none" ? "Learn it again" : LEARN_WORDS[now]}
      </Button>
    </>
  );
}

/** Whether it turns the dial, or would once both show one number. */
const isReady = ({ source, trouble, learning }: DeviceHub) =>
  source !== null && learning === null && (trouble === null || trouble.code === "come-to");

/** Connects what was chosen, and waits until it is ready. */
export function ConnectSource({ device, hub, printAddress, onNext, onBack }: ConnectSourceProps) {
  const isIn = hub.device === device && (hub.isConnected || hub.isOpening);
  const { needs, isBuilt } = sourceLine(device.kind);
  return (
    <>
      <p>{device.about}</p>
      {!isIn && (
        <p>
          <span className="text-soft">Needs:</span> {needs}
        </p>
      )}
      {isBuilt && !isIn && (
        <p>
          Not built yet? <a href={printAddress}>Print and build it</a>.
        </p>
      )}
      {isIn && hub.isLearned !== undefined && <Learn hub={hub} />}
      <div className="row">
        {isIn ? (
          // Not disabled: it stands where Connect was pressed, and would lose the focus.
          <Button
            className={isReady(hub) ? "primary" : ""}
            aria-disabled={!isReady(hub)}
            onClick={() => isReady(hub) && onNext()}
          >
            Go on to zero
          </Button>
        ) : (
          <Button className="primary" onClick={() => void hub.connect(device)}>
            {hub.device === device ? "Connect again" : "Connect"}
          </Button>
        )}
        <Button
          onClick={() => {
            hub.disconnect();
            onBack();
          }}
        >
          Choose another source
        </Button>
      </div>
    </>
  );
}
