import { useCallback, useEffect, useRef } from "react";
import { Cutaway } from "../cutaway/Cutaway";
import { useRunOn } from "../dial/useRunOn";
import { weightWords } from "../dial/weightWords";
import { spanText } from "../sheets/sheetWords";
import { BreakOff } from "./BreakOff";
import { DialingStationHand } from "./DialingStationHand";
import { SittingClock } from "./SittingClock";
import type { SittingSession, TryInHand } from "./sittingSession";
import { stationTitle } from "./sittingWords";
import { useRest, useStore } from "./useSitting";
import { ZeroingStationHand } from "./ZeroingStationHand";

const endLabel = ({ kind, setup }: TryInHand) => {
  if (kind === "zeroing") return "End this try";
  return setup.station.kind === "dialing" && setup.station.upTo !== undefined ? "I have dialed it" : "End this try";
};

/** What follows an ended try; else the way to end one. */
function TryButtons({ session, one }: { readonly session: SittingSession; readonly one: TryInHand }) {
  const next = useRef<HTMLButtonElement>(null);
  const { isEnded } = one;
  useEffect(() => {
    if (isEnded) next.current?.focus();
  }, [isEnded]);
  if (isEnded) {
    return (
      <button ref={next} type="button" className="button primary" onClick={() => session.takeNext()}>
        Next try
      </button>
    );
  }
  return (
    <button type="button" className="button" disabled={!one.isBegun} onClick={() => session.endTry(Date.now())}>
      {endLabel(one)}
    </button>
  );
}

const conditionWords = ({ setup: { station, conditions } }: TryInHand) =>
  [
    station.timeLimit_s === undefined ? "" : `At most ${spanText(station.timeLimit_s)} for a try to count.`,
    weightWords(conditions.dial),
  ].join(" ");

function SittingPanel({ session, one }: { readonly session: SittingSession; readonly one: TryInHand }) {
  const { station } = one.setup;
  const mayPause = session.plan.pauseAllowed && !session.memory.isTryBegun;
  return (
    <section className="panel sitting-panel" aria-label="Sitting">
      <h2>
        {session.sheet.title}{" "}
        <small>
          try {session.tryIndex + 1} of {session.tries.length}
        </small>
      </h2>
      <SittingClock session={session} />
      <p className="sitting-title">{stationTitle(station)}</p>
      {station.task !== undefined && <p>{station.task}</p>}
      <p className="sitting-soft">{conditionWords(one)}</p>
      <p role="status" data-testid="try-state">
        {one.isEnded ? "This try has ended. What it came to is shown at the end of the sitting." : ""}
      </p>
      <div className="sitting-buttons">
        <TryButtons session={session} one={one} />
        {session.plan.pauseAllowed && (
          <button type="button" className="button" disabled={!mayPause} onClick={() => session.pause(Date.now())}>
            Pause
          </button>
        )}
        <BreakOff session={session} />
      </div>
    </section>
  );
}

function TryView({ session, one }: { readonly session: SittingSession; readonly one: TryInHand }) {
  useStore(one);
  const place = useRef<HTMLDivElement>(null);
  useRest(useCallback((at, now) => session.rest(at, now), [session]));
  useRunOn(
    one,
    useCallback((at) => session.runOn(at, Date.now()), [session]),
  );
  const onTurn = useCallback((by: number, at: number) => session.turnBy(by, at, Date.now()), [session]);
  // Each try brings a dial of its own, and the hand goes to it.
  useEffect(() => {
    place.current?.querySelector<HTMLElement>(".dial")?.focus({ preventScroll: true });
  }, []);
  const hasCutaway = one.kind === "dialing" && one.setup.station.help === "full" && one.setup.conditions.cutaway;
  return (
    <div className="workplace sitting-workplace">
      <div className="workplace-hand" ref={place}>
        {one.kind === "dialing" ? (
          <DialingStationHand one={one} onTurn={onTurn} />
        ) : (
          <ZeroingStationHand
            one={one}
            onTurn={onTurn}
            onReading={() => session.takeReading(performance.now(), Date.now())}
          />
        )}
      </div>
      <div className="workplace-panels">
        <SittingPanel session={session} one={one} />
        {hasCutaway && <Cutaway attempt={one.attempt} version={one.version} />}
        <footer className="workplace-foot">
          <p>A practice result is not a certificate.</p>
        </footer>
      </div>
    </div>
  );
}

/** The try in hand. Nothing of it is shown or told beyond the help that the sheet gives. */
export function StationView({ session }: { readonly session: SittingSession }) {
  const one = session.inHand;
  return one === null ? null : <TryView key={`${one.kind}-${session.tryIndex}`} session={session} one={one} />;
}
