import { Button } from "../../../../parts/controls/Button";
import { Notice } from "../../../../parts/Notice";
import { useStore } from "../../../../parts/page/useStore";
import { CameraChoice } from "../camera/CameraChoice";
import { DialSeen } from "../camera/DialSeen";
import { FoundDial } from "../camera/FoundDial";
import { LivePicture } from "../camera/LivePicture";
import { PRIVACY } from "../camera/setupText";
import type { DeviceSetupProps } from "../dialDevice";
import { MARKS_BY_KEYS, MarkedPicture } from "./MarkedPicture";
import { ORDINARY_VIEW, type OrdinaryActs, type OrdinaryView } from "./ordinaryView";
import { findingText, hintText, partText, setupText } from "./ordinaryWords";
import { PracticeQuestion } from "./PracticeQuestion";
import { StepHead } from "./StepHead";

interface StepProps {
  readonly view: OrdinaryView;
  readonly stream: MediaStream;
  readonly acts: OrdinaryActs;
}

const MARKS_TITLE = "Put two marks on the picture";

/** The dial on 0, and the two marks. */
function MarkStep({ view, stream, acts }: StepProps) {
  const isFinding = view.step === "finding";
  return (
    <>
      <StepHead number={2} title={MARKS_TITLE} />
      <p>
        Fix the camera so that it cannot move, with the whole dial in the picture. Turn the dial to 0. Take your hand
        off.
      </p>
      <div className="grid items-start gap-x-5 gap-y-3 tiles-[320px]">
        <MarkedPicture view={view} stream={stream} />
        <div className="stack">
          <p role="status" className="font-semibold">
            {findingText(view)}
          </p>
          {view.problem !== null && !isFinding && <Notice className="">{setupText(view.problem)}</Notice>}
          <Button
            className={`self-start ${view.nextTap === null ? "primary" : ""}`}
            aria-disabled={isFinding}
            onClick={() => isFinding || acts.find()}
          >
            Find the dial
          </Button>
          <p id={MARKS_BY_KEYS} className="text-soft">
            By keys: Tab to a mark, then the arrow keys. With Shift they take ten steps at once.
          </p>
          <p className="text-soft">{PRIVACY}</p>
          <CameraChoice stream={stream} onAgain={acts.changeCamera} />
        </div>
      </div>
    </>
  );
}

/** One slow turn, from which the dial is learned. */
function TurnStep({ view, stream, acts }: StepProps) {
  const { width, height } = view.size;
  return (
    <>
      <StepHead number={3} title="Turn the dial once round, slowly" />
      <p>
        The dial is found. Take about 10 seconds for the turn, either way. Hold the knob by its side, so that your hand
        covers little of the numbers.
      </p>
      <div className="grid items-start gap-x-5 gap-y-3 tiles-[320px]">
        <LivePicture stream={stream}>
          <svg
            className="absolute inset-0 w-full h-full"
            viewBox={`0 0 ${width} ${height}`}
            aria-hidden="true"
            focusable="false"
          >
            {view.rim !== null && <FoundDial shown={view.rim} isSure />}
          </svg>
        </LivePicture>
        <div className="stack">
          <div className="row">
            <progress className="flex-1 max-w-[320px]" aria-label="Slow turn" value={view.part} />
            <span>{partText(view.part)}</span>
          </div>
          <p role="status" className="font-semibold">
            {hintText(view.hint, view.part)}
          </p>
          <Button className="self-start" onClick={acts.again}>
            Back to the marks
          </Button>
          <p className="text-soft">{PRIVACY}</p>
        </div>
      </div>
    </>
  );
}

/** From the question whether it is a practice lock to a dial that is followed. */
export function OrdinarySetup({ isReversed }: Pick<DeviceSetupProps, "isReversed">) {
  const view = useStore(ORDINARY_VIEW);
  const { step, stream, acts } = view;
  if (acts === null) return null;
  if (step === "question") return <PracticeQuestion onAgree={acts.agree} onRefuse={acts.refuse} />;
  if (stream === null) {
    return (
      <div className="stack">
        <StepHead number={2} title={MARKS_TITLE} />
        <p role="status">Turning the camera on. If the browser asks for it, allow it.</p>
      </div>
    );
  }
  if (step === "followed") {
    return (
      <>
        <DialSeen view={view} onAgain={acts.changeCamera} isReversed={isReversed} />
        <Button className="self-start" onClick={acts.again}>
          Set the dial up again
        </Button>
      </>
    );
  }
  const Step = step === "turn" ? TurnStep : MarkStep;
  return (
    <div className="stack">
      <Step {...{ view, stream, acts }} />
    </div>
  );
}
