import { Button } from "../../../../parts/controls/Button";
import { Notice } from "../../../../parts/Notice";
import { useStore } from "../../../../parts/page/useStore";
import { CameraChoice } from "../camera/CameraChoice";
import { DialSeen } from "../camera/DialSeen";
import { FoundDial } from "../camera/FoundDial";
import { LivePicture } from "../camera/LivePicture";
import { PRIVACY } from "../camera/setupText";
import type { DeviceSetupProps } from "../dialDevice";
import { MarkedPicture } from "./MarkedPicture";
import { ORDINARY_VIEW, type OrdinaryView } from "./ordinaryView";
import { hintText, nextTapText, partText, setupText } from "./ordinaryWords";
import { PracticeQuestion } from "./PracticeQuestion";

interface StepProps {
  readonly view: OrdinaryView;
  readonly stream: MediaStream;
}

/** The dial on 0, and the two marks. */
function MarkStep({ view, stream }: StepProps) {
  const isFinding = view.step === "finding";
  return (
    <>
      <p>Put the camera on a stand, with the whole dial in the picture. Turn the dial to 0 and take your hand off.</p>
      <MarkedPicture view={view} stream={stream} />
      <p>{PRIVACY}</p>
      <p role="status">{isFinding ? "Looking for the dial." : nextTapText(view.nextTap)}</p>
      {view.problem !== null && !isFinding && <Notice>{setupText(view.problem)}</Notice>}
      <Button className="mt-2" disabled={isFinding} onClick={() => view.acts?.find()}>
        Find the dial
      </Button>
    </>
  );
}

/** One slow turn, from which the dial is learned. */
function TurnStep({ view, stream }: StepProps) {
  const { width, height } = view.size;
  return (
    <>
      <p>The dial is found. Now turn it once round, slowly: about 10 seconds for the turn, either way.</p>
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
      <p>{PRIVACY}</p>
      <div className="row mt-2">
        <progress className="flex-1 max-w-[320px]" aria-label="Slow turn" value={view.part} />
        <span>{partText(view.part)}</span>
      </div>
      <p role="status">{hintText(view.hint)}</p>
      <Button className="mt-2" onClick={() => view.acts?.again()}>
        Back to the marks
      </Button>
    </>
  );
}

/** From the question whether it is a practice lock to a dial that is followed. */
export function OrdinarySetup({ onAgain }: DeviceSetupProps) {
  const view = useStore(ORDINARY_VIEW);
  const { step, stream, acts } = view;
  if (acts === null) return null;
  if (step === "question") return <PracticeQuestion onAgree={acts.agree} onRefuse={acts.refuse} />;
  if (stream === null) return <p role="status">Turning the camera on.</p>;
  if (step === "followed") {
    return (
      <>
        <DialSeen view={view} onAgain={onAgain} />
        <Button className="mt-2" onClick={acts.again}>
          Set the dial up again
        </Button>
      </>
    );
  }
  return (
    <div className="mt-2">
      {step === "turn" ? <TurnStep view={view} stream={stream} /> : <MarkStep view={view} stream={stream} />}
      <CameraChoice stream={stream} onAgain={onAgain} />
    </div>
  );
}
