import { adviceFor } from "../../../dialing/advice";
import { stateInWords } from "../../../dialing/dialingMachine";
import { readingText } from "../../../dialing/words";
import { type Graduations, type Milliseconds, reading } from "../../../lock/dial";
import { AdviceLine } from "../../hand/AdviceLine";
import { Dial } from "../../hand/dial/Dial";
import type { HubText } from "../../hand/dial/Hub";
import { spokenReading } from "../../hand/dial/spokenReading";
import type { HubStrength } from "../../hand/hubReading";
import { StepStrip } from "../../hand/StepStrip";
import { lastTurn, spokenDial } from "../../hand/spoken";
import { TurnButtons } from "../../hand/TurnButtons";
import { useHubReading } from "../../hand/useHubReading";
import type { DialingTry } from "../tries/dialingTry";

const KEYS_HELP =
  "Arrow keys turn the way they point, by one; hold them to keep turning, with Shift fast. Comma and period nudge by a tenth. Page Up and Page Down turn by ten, with Shift by a whole turn. There is no second chance.";

interface DialingStationHandProps {
  readonly one: DialingTry;
  readonly onTurn: (by: Graduations, at: Milliseconds) => void;
}

const shownReading = ({ seen, attempt }: DialingTry) =>
  readingText(reading(seen, attempt.profile.graduations), attempt.profile);

/** An index that stands off changes what is read, not what the lock counts. */
const spokenOf = (one: DialingTry) => {
  const { help } = one.setup.station;
  return one.indexError === 0 && one.dial === one.attempt.dial
    ? spokenDial(one.attempt, help)
    : spokenReading(shownReading(one));
};

/** The reading in the hub fades as it does on the bench. */
const hubOf = (one: DialingTry, strength: HubStrength): HubText | null => {
  if (one.setup.station.help !== "full") return null;
  const turn = lastTurn(one.attempt);
  return {
    reading: strength === "hidden" ? "" : shownReading(one),
    note: turn === null ? "at rest" : `turning ${turn}`,
    isFaint: strength === "faint",
  };
};

/** The dial of a dialing try, with the help that the sheet gives and no way to begin again. */
export function DialingStationHand({ one, onTurn }: DialingStationHandProps) {
  const { attempt, state, setup, isEnded } = one;
  const { help } = setup.station;
  const { profile } = attempt;
  const { strength } = useHubReading(help, null);
  const isSilent = isEnded || help === "silent";
  const advice = isEnded ? null : adviceFor(attempt, state, help);
  return (
    <>
      {/* In silence the strip tells the numbers to dial, and not what the bolt did. */}
      <StepStrip attempt={attempt} state={isSilent ? "waiting" : state} help={isSilent ? "silent" : help} />
      <AdviceLine advice={advice} note={isEnded ? "This try has ended." : null} onLeave={null} />
      <div className="workplace-dial">
        <Dial
          position={one.dial}
          graduations={profile.graduations}
          numbersIncrease={profile.numbersIncrease}
          ringTurn={one.indexError}
          windUp={one.windUp}
          spoken={spokenOf(one)}
          pointTo={help === "full" ? (advice?.turn ?? null) : null}
          hub={hubOf(one, strength)}
          describedBy="sitting-keys"
          onTurn={onTurn}
        />
        <p id="sitting-keys" className="visually-hidden">
          {KEYS_HELP}
        </p>
      </div>
      <p className="visually-hidden" role="status">
        {isSilent ? "" : stateInWords(state, one.number)}
      </p>
      <TurnButtons perTurn={profile.graduations} onTurn={onTurn} />
    </>
  );
}
