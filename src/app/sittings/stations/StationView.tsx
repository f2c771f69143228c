import { useCallback, useEffect, useMemo } from "react";
import { focusDial } from "../../hand/dial/focusDial";
import { heldBy } from "../../hand/heldDial";
import { useRest } from "../../hand/timePasses";
import { useStore, useStored } from "../../parts/page/useStore";
import { Cutaway } from "../../pictures/cutaway/Cutaway";
import type { SittingSession } from "../session/sittingSession";
import { pageTime } from "../session/steadyTime";
import { type DialTry, isDialTry } from "../tries/tryInHand";
import { DialingStationHand } from "./DialingStationHand";
import { JobStation } from "./JobStation";
import { SittingPanel } from "./SittingPanel";
import { ZeroingStationHand } from "./ZeroingStationHand";

interface DialStationProps {
  readonly session: SittingSession;
  readonly one: DialTry;
}

function DialStation({ session, one }: DialStationProps) {
  useStore(one);
  useRest(useCallback((at) => session.rest(at, pageTime.now()), [session]));
  const held = useMemo(() => {
    // What the hand does takes the sitting's own time.
    const turnBy = (by: number, at: number) => session.turnBy(by, at, pageTime.now());
    return heldBy(one, {
      turnBy,
      runOn: (at) => session.runOn(at, pageTime.now()),
      noteSource: (source) => session.admits(source),
      noteDoubt: (why) => session.noteDoubt(why, pageTime.now()),
    });
  }, [session, one]);
  // Each try brings a dial of its own, and the hand goes to it.
  useEffect(focusDial, []);
  const hasCutaway = one.kind === "dialing" && one.setup.station.help === "full" && one.setup.conditions.cutaway;
  return (
    <div className="workplace sitting-workplace">
      <div className="workplace-hand">
        {one.kind === "dialing" ? (
          <DialingStationHand {...{ one, held }} />
        ) : (
          <ZeroingStationHand
            {...{ one, held }}
            onReading={() => session.takeReading(performance.now(), pageTime.now())}
          />
        )}
      </div>
      <div className="workplace-panels">
        <SittingPanel session={session} one={one} />
        {hasCutaway && <Cutaway attempt={one.attempt} version={one.version} />}
        <footer className="workplace-foot flex phone:flex-wrap items-start gap-5 mt-auto px-edge py-4 text-fine leading-[1.4] text-soft">
          <p>A practice result is not a certificate.</p>
        </footer>
      </div>
    </div>
  );
}

/** The try in hand. Nothing of it is shown or told beyond the help that the sheet gives. */
export function StationView({ session }: { readonly session: SittingSession }) {
  const one = useStored(session, ({ inHand }) => inHand);
  if (one === null) return null;
  // One that is begun again is another one.
  const key = `${one.kind}-${session.tryIndex}-${one.setup.begunAgain}`;
  return isDialTry(one) ? (
    <DialStation key={key} session={session} one={one} />
  ) : (
    <JobStation key={key} session={session} one={one} />
  );
}
