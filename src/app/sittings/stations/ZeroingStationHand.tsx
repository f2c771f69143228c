import { useSelector } from "@xstate/react";
import type { ZeroingContext } from "../../../zeroing/zeroingMachine";
import { refusalWords } from "../../../zeroing/zeroWords";
import { ZeroingHand } from "../../exercises/zeroing/ZeroingHand";
import { ZeroingStrip } from "../../exercises/zeroing/ZeroingStrip";
import { AdviceLine } from "../../hand/AdviceLine";
import type { HeldDial } from "../../hand/heldDial";
import { memoryOf } from "../../parts/page/ofChart";
import { TRY_ENDED } from "../../results/sheetWords";
import "../../exercises/zeroing/zeroing.css";
import type { ZeroingTry } from "../tries/zeroingTry";

interface ZeroingStationHandProps {
  readonly one: ZeroingTry;
  readonly held: HeldDial;
  readonly onReading: () => void;
}

/** What the lock answered to the last reading; with help also where it lay. */
function lastWords({ session, setup }: ZeroingTry, { last, wanted }: ZeroingContext): string {
  if (last === null) return "";
  const { side, refusal, accepted } = last;
  const seen = setup.station.help === "silent" ? undefined : last.deviation;
  if (refusal !== null) return `Not counted. ${refusalWords(refusal, side, session.setup.rules, seen)}`;
  return `Stop ${accepted} of ${wanted[side]} turning ${side} counts.`;
}

/** The dial of a zeroing try: the ring is clamped, and there is no way to begin again. */
export function ZeroingStationHand({ one, held, onReading }: ZeroingStationHandProps) {
  const { session, setup, isEnded } = one;
  const memory = useSelector(session.chart, memoryOf);
  const hasHelp = setup.station.help !== "silent";
  return (
    <>
      {isEnded ? <AdviceLine advice={null} note={TRY_ENDED} onLeave={null} /> : <ZeroingStrip session={session} />}
      <ZeroingHand
        session={session}
        profile={setup.profile}
        held={held}
        hasLoupe={hasHelp}
        pointTo={hasHelp ? session.asked : null}
        onReading={isEnded ? null : onReading}
        onRestart={null}
      />
      <p className="min-h-[1.45em] text-center text-soft" role="status">
        {lastWords(one, memory)}
      </p>
    </>
  );
}
