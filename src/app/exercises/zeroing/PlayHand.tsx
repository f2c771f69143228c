import type { KeyboardEvent } from "react";
import { readingText } from "../../../dialing/words";
import { reading } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";
import { Dial } from "../../hand/dial/Dial";
import { plainKey } from "../../hand/dial/plainKey";
import { spokenReading } from "../../hand/dial/spokenReading";
import { TurnButtons } from "../../hand/TurnButtons";
import { CamWindow, camWords } from "./CamWindow";
import { Magnifier } from "./Magnifier";
import type { PlaySession } from "./playSession";
import { useTurn } from "./useZeroing";

interface PlayHandProps {
  readonly play: PlaySession;
  readonly profile: Profile;
}

/** The dial with a window onto the cam behind it. */
export function PlayHand({ play, profile }: PlayHandProps) {
  const { lock } = play;
  const onTurn = useTurn(play);
  const shown = readingText(reading(lock.seen, profile.graduations), profile);
  const onOtherKey = (event: KeyboardEvent) => {
    const key = plainKey(event);
    if (key === " ") {
      event.preventDefault();
      play.keepStop();
    }
    if (key === "r") play.again();
    if (key === "n") play.newLock();
  };
  return (
    <>
      <div className="advice">
        <p className="advice-say">Stop on the cam's mark from each side.</p>
        <p className="advice-detail" role="status">
          {camWords(lock.camDeviation)}
        </p>
      </div>
      <div className="workplace-dial zeroing-dial">
        <Dial
          position={lock.dial}
          graduations={profile.graduations}
          numbersIncrease={profile.numbersIncrease}
          ringTurn={lock.indexError}
          surround={20}
          spoken={`${spokenReading(shown)}, ${camWords(lock.camDeviation)}`}
          pointTo={null}
          hub={{ reading: shown, note: "at the index" }}
          describedBy="play-keys"
          onTurn={onTurn}
          onOtherKey={onOtherKey}
        />
        <div className="zeroing-loupe">
          <Magnifier seen={lock.seen} graduations={profile.graduations} numbersIncrease={profile.numbersIncrease} />
        </div>
        <div className="zeroing-loupe cam">
          <CamWindow deviation={lock.camDeviation} />
        </div>
        <p id="play-keys" className="visually-hidden">
          Arrow keys turn the way they point, by one; comma and period nudge by a tenth. Space records the stop. R
          begins again, N takes another lock.
        </p>
        <button type="button" className="button workplace-again" aria-keyshortcuts="R" onClick={() => play.again()}>
          Again <kbd>R</kbd>
        </button>
        <button type="button" className="button workplace-new" aria-keyshortcuts="N" onClick={() => play.newLock()}>
          New lock <kbd>N</kbd>
        </button>
      </div>
      <div className="zeroing-controls">
        <TurnButtons perTurn={profile.graduations} onTurn={onTurn} />
        <button
          type="button"
          className="button primary"
          disabled={play.turn === null || play.mark !== null}
          aria-keyshortcuts="Space"
          onClick={() => play.keepStop()}
        >
          Record this stop <kbd>space</kbd>
        </button>
      </div>
    </>
  );
}
