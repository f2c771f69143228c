import type { Profile } from "../../../lock/profile";
import { againAct, newAct, stopAct } from "../../hand/handActs";
import { LockInHand } from "../../hand/LockInHand";
import { CamWindow, camWords } from "./CamWindow";
import { Magnifier } from "./Magnifier";
import type { PlaySession } from "./playSession";

interface PlayHandProps {
  readonly play: PlaySession;
  readonly profile: Profile;
}

/** The dial with a window onto the cam behind it. */
export function PlayHand({ play, profile }: PlayHandProps) {
  const { lock } = play;
  const words = camWords(lock.camDeviation);
  return (
    <>
      <div className="advice">
        <p className="advice-say">Stop on the cam's mark from each side.</p>
        <p className="advice-detail" role="status">
          {words}
        </p>
      </div>
      <LockInHand
        profile={profile}
        dial={lock.dial}
        held={play}
        ringTurn={lock.indexError}
        surround={20}
        said={[words]}
        digits="always"
        acts={[
          againAct(() => play.again(), "begins again"),
          newAct("New lock", "takes another lock", () => play.newLock()),
          stopAct(() => play.keepStop(), play.turn === null || play.mark !== null),
        ]}
        loupe={<Magnifier seen={lock.seen} profile={profile} />}
        window={<CamWindow deviation={lock.camDeviation} />}
      />
    </>
  );
}
