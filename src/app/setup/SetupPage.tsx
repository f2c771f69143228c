import { useEffect, useState } from "react";
import type { SetupRecord } from "../../realdial/setup/setupRecord";
import { DEVICE_SLOT } from "../hand/sources/deviceSlot";
import { CAMERA_VIEW } from "../hand/sources/devices/camera/cameraView";
import type { DeviceHub } from "../hand/sources/devices/deviceHub";
import type { DialDevice } from "../hand/sources/devices/dialDevice";
import { DeviceLine } from "../hand/sources/devices/panel/DeviceLine";
import { DEVICE_HUB } from "../hand/sources/devices/panel/devicesHere";
import { useStore } from "../parts/page/useStore";
import { DeviceView } from "./DeviceView";
import { StepList } from "./StepList";
import { isBeingSetUp } from "./session/isBeingSetUp";
import { rememberSetup } from "./session/rememberedSetup";
import { type SetupAsked, setupAddress } from "./session/setupAddress";
import { SetupSession, type SetupStep } from "./session/setupSession";
import { sourceLine } from "./session/sourceLines";
import { ChooseSource } from "./steps/ChooseSource";
import { ConnectSource } from "./steps/ConnectSource";
import { SetupDone } from "./steps/SetupDone";
import { StepTask } from "./steps/StepTask";
import { ThreeChecks } from "./steps/ThreeChecks";
import { ZeroAndDirection } from "./steps/ZeroAndDirection";
import "../hand/hand.css";

/** So often it is looked how the dial stands, ms. */
const LOOK_EVERY = 100;

const TITLES: Readonly<Record<SetupStep, string>> = {
  source: "Choose what you turn",
  connect: "Connect it",
  zero: "Say where 0 is, and which way it counts",
  checks: "Check three stops",
  done: "Your dial is set up",
};

/** Whether the dial on the screen is where the knob is. */
const isSure = ({ source, trouble, learning, watch }: DeviceHub) =>
  source !== null && trouble === null && learning === null && !watch.isAsking;

/** What was found, to be remembered. */
const foundBy = (session: SetupSession, hub: DeviceHub): SetupRecord => ({
  at: Date.now(),
  perTurn: session.perTurn,
  resolution: hub.source?.resolution ?? 0,
  noise: hub.source?.noise ?? session.noise,
  rate: CAMERA_VIEW.rate,
  delay_ms: hub.delays?.middle ?? null,
  errors: [...session.errors],
});

/** The session of this visit, which the device turns the dial of while the page is on. */
function useSetup(perTurn: number) {
  const hub = useStore(DEVICE_HUB);
  const [made] = useState(() => new SetupSession(perTurn, hub.isConnected ? "connect" : "source"));
  const session = useStore(made);
  useEffect(() => {
    DEVICE_SLOT.show(DeviceLine);
    const takeAway = DEVICE_SLOT.put(session);
    const timer = setInterval(() => session.look(performance.now(), isSure(DEVICE_HUB)), LOOK_EVERY);
    return () => {
      clearInterval(timer);
      takeAway();
      DEVICE_HUB.leaveSetup();
    };
  }, [session]);
  return { hub, session };
}

interface TaskProps {
  readonly asked: SetupAsked;
  readonly hub: DeviceHub;
  readonly session: SetupSession;
  readonly device: DialDevice | null;
  readonly onDevice: (device: DialDevice) => void;
}

/** What there is to do in the step that one is at. */
function Task({ asked, hub, session, device, onDevice }: TaskProps) {
  if (session.step === "source" || device === null)
    return <ChooseSource source={hub.source} perTurn={session.perTurn} onChoose={onDevice} />;
  const { hasNumbers } = sourceLine(device.kind);
  const common = { session, hasNumbers, isSure: isSure(hub), onZero: () => session.beginZero(hasNumbers) };
  if (session.step === "connect") {
    const printAddress = setupAddress({ ...asked, isPrint: true });
    return (
      <ConnectSource
        {...{ device, hub, printAddress }}
        onNext={() => session.beginZero(hasNumbers)}
        onBack={() => session.goTo("source")}
      />
    );
  }
  if (session.step === "zero") {
    const reverse = () => {
      hub.reverse(!hub.isReversed);
      session.turnedRound();
    };
    const isHeard = hub.source !== null && hub.trouble === null;
    const onNext = () => session.goTo("checks");
    return <ZeroAndDirection {...common} {...{ isHeard, onNext }} watch={hub.watch} onReverse={reverse} />;
  }
  if (session.step === "checks") {
    const finish = () => {
      const found = foundBy(session, hub);
      rememberSetup(device.kind, hub.which, found);
      session.finish(found);
    };
    return <ThreeChecks {...common} resolution={hub.source?.resolution ?? 0} onNext={finish} />;
  }
  if (session.found === null) return null;
  return <SetupDone record={session.found} back={asked.back} onAgain={() => session.goTo("checks")} />;
}

/** Sets a dial in the hand up, one task in sight at a time. */
export function SetupPage({ asked }: { readonly asked: SetupAsked }) {
  const { hub, session } = useSetup(asked.perTurn);
  const [device, setDevice] = useState(hub.device);
  const choose = (chosen: DialDevice) => {
    setDevice(chosen);
    session.goTo("connect");
  };
  const isPlain = session.step === "source" || device === null;
  // Then the setup is the task, and there is nothing to be seen beside it.
  const isInTask = !isPlain && session.step === "connect" && isBeingSetUp(device, hub);
  return (
    <main className="page max-w-[920px]">
      <header className="spread">
        <h1 tabIndex={-1}>Set up a dial in your hand</h1>
        <p className="text-small">
          <a href={setupAddress({ ...asked, isPrint: true })}>Print and build a dial</a>
        </p>
      </header>
      <StepList step={session.step} />
      <div className={isPlain || isInTask ? "grid" : "grid items-start gap-6 tiles-[340px]"}>
        <StepTask key={session.step} title={TITLES[session.step]} isFirst={!session.hasMoved}>
          <Task {...{ asked, hub, session, device }} onDevice={choose} />
        </StepTask>
        {!isPlain && !isInTask && <DeviceView {...{ device, hub, session }} />}
      </div>
      <p className="text-small text-soft">
        We have tried these sources in simulation only: no real camera, print, board or phone. The checks here measure
        yours.
      </p>
    </main>
  );
}
