import { useEffect, useRef } from "react";
import type { DeviceHub } from "../../hand/sources/devices/deviceHub";
import type { DialDevice } from "../../hand/sources/devices/dialDevice";
import { isOut } from "../../hand/sources/devices/isOut";
import { Button } from "../../parts/controls/Button";
import { isBeingSetUp } from "../session/isBeingSetUp";
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
  none: "The page must learn what your knob sends. Press the button, then turn the knob as you are asked.",
  left: "Turn the knob left by one whole turn. Then press the button.",
  right: "Now turn it right by one whole turn. Then press the button.",
} as const;

/** A knob whose steps are not known. */
function Learn({ hub }: { readonly hub: DeviceHub }) {
  const now = hub.learning ?? "none";
  const isAgain = hub.isLearned === true && now === "none";
  return (
    <>
      <p role="status">{LEARN_TASKS[now]}</p>
      <Button className={isAgain ? "self-start" : "primary self-start"} onClick={() => hub.learnOn()}>
        {isAgain ? "Learn it again" : LEARN_WORDS[now]}
      </Button>
    </>
  );
}

/** Whether what is connected waits for a knob that is not there yet: then there is nothing to learn. */
const isAbsent = ({ trouble }: DeviceHub) => trouble?.code === "no-controller" || trouble?.code === "no-inputs";

/** Whether it turns the dial, or would once both show one number. */
const isReady = ({ source, trouble, learning }: DeviceHub) =>
  source !== null && learning === null && (trouble === null || trouble.code === "come-to");

/** What it is, and what a person chooses before it is connected. */
function BeforeIt({ device, printAddress }: Pick<ConnectSourceProps, "device" | "printAddress">) {
  const { needs, isBuilt } = sourceLine(device.kind);
  return (
    <>
      <p>{device.about}</p>
      <p>
        <span className="text-soft">Needs:</span> {needs}
      </p>
      {isBuilt && (
        <p>
          Not built yet? <a href={printAddress}>Print and build it</a>.
        </p>
      )}
      {device.Before !== undefined && <device.Before />}
    </>
  );
}

/** It was set up and is followed. The focus was on what is gone now. */
function SetUp() {
  const place = useRef<HTMLParagraphElement>(null);
  useEffect(() => place.current?.focus(), []);
  return (
    <p ref={place} tabIndex={-1}>
      The page has learned your dial, and follows it now.
    </p>
  );
}

/** What is to be done with one that is connected. */
function Connected({ device, hub }: Pick<ConnectSourceProps, "device" | "hub">) {
  if (isBeingSetUp(device, hub))
    return device.Setup && <device.Setup onAgain={() => void hub.connect(device)} isReversed={hub.isReversed} />;
  return (
    <>
      {device.isSetUpEachTime ? <SetUp /> : <p>{device.about}</p>}
      {hub.isLearned !== undefined && !isAbsent(hub) && <Learn hub={hub} />}
    </>
  );
}

/** Connects what was chosen, and waits until it is ready. */
export function ConnectSource({ device, hub, printAddress, onNext, onBack }: ConnectSourceProps) {
  const isIn = hub.device === device && (hub.isConnected || hub.isOpening);
  return (
    <>
      {isIn ? <Connected {...{ device, hub }} /> : <BeforeIt {...{ device, printAddress }} />}
      <div className="row">
        {/* One button whose words change, never disabled: whoever pressed Connect keeps the focus. */}
        {isIn && !isOut(hub) ? (
          !isBeingSetUp(device, hub) && (
            <Button
              className={isReady(hub) ? "primary" : ""}
              aria-disabled={!isReady(hub)}
              onClick={() => isReady(hub) && onNext()}
            >
              Go on to zero
            </Button>
          )
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
