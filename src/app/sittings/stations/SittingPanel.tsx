import { useSelector } from "@xstate/react";
import { useEffect, useRef } from "react";
import { stationName } from "../../../drill/sheet/stationName";
import { WEIGHT_WORDS } from "../../hand/dial/weightWords";
import { Button } from "../../parts/controls/Button";
import { Notice } from "../../parts/Notice";
import { memoryOf } from "../../parts/page/ofChart";
import { useStored } from "../../parts/page/useStore";
import { begunAgainSentence, lostSightSentence } from "../../results/doubtWords";
import { jobNote, spanText, TRY_ENDED } from "../../results/sheetWords";
import { admissionSentence, refusedSourceSentence } from "../../results/sourceWords";
import type { SittingSession } from "../session/sittingSession";
import { pageTime } from "../session/steadyTime";
import type { TryInHand } from "../tries/tryInHand";
import { BreakOff } from "./BreakOff";
import { SittingClock } from "./SittingClock";
import { Candidate, SeedLine } from "./SittingHead";

const endLabel = ({ kind, setup: { station } }: TryInHand) =>
  kind === "dialing" && station.kind === "dialing" && station.upTo !== undefined ? "I have dialed it" : "End this try";

/** What follows an ended try; else the way to end one. */
function TryButtons({ session, one }: SittingPanelProps) {
  const next = useRef<HTMLButtonElement>(null);
  const { isEnded } = one;
  useEffect(() => {
    if (isEnded) next.current?.focus();
  }, [isEnded]);
  if (isEnded) {
    return (
      <Button ref={next} className="primary" onClick={() => session.takeNext()}>
        Next try
      </Button>
    );
  }
  return (
    <Button disabled={!one.isBegun} onClick={() => session.endTry(pageTime.now())}>
      {endLabel(one)}
    </Button>
  );
}

const conditionWords = ({ setup: { station, conditions } }: TryInHand) =>
  [
    station.timeLimit_s === undefined ? "" : `A try counts if it takes at most ${spanText(station.timeLimit_s)}.`,
    admissionSentence(station) ?? "",
    lostSightSentence(station) ?? "",
    WEIGHT_WORDS[conditions.dial],
  ]
    .filter((words) => words !== "")
    .join(" ");

interface SittingPanelProps {
  readonly session: SittingSession;
  readonly one: TryInHand;
}

/** Where the sitting is, what the station asks, and the ways on: the same beside every try. */
export function SittingPanel({ session, one }: SittingPanelProps) {
  const { station, begunAgain } = one.setup;
  const refused = useStored(session, (now) => now.refused);
  const { isTryBegun } = useSelector(session.chart, memoryOf);
  return (
    <section className="panel sitting-panel stack gap-4" aria-label="Sitting">
      <h2 className="mb-0">
        {session.sheet.title}{" "}
        <small>
          try {session.tryIndex + 1} of {session.tries.length}
        </small>
      </h2>
      <div className="sitting-bar row gap-x-5 gap-y-2">
        <Candidate session={session} />
        <SittingClock session={session} />
      </div>
      <SeedLine session={session} />
      <p className="text-title">{stationName(station, one.setup.plan.station)}</p>
      <p className="empty:hidden">{station.task ?? jobNote(station)}</p>
      <p className="text-soft empty:hidden">{conditionWords(one)}</p>
      <p role="status" className="sitting-try-state empty:hidden" data-testid="try-state">
        {one.isEnded ? `${TRY_ENDED} The result is shown after the sitting.` : ""}
      </p>
      <p role="status" className="empty:hidden" data-testid="begun-again">
        {begunAgain > 0 ? begunAgainSentence(begunAgain) : ""}
      </p>
      {refused !== null && (
        <Notice>{refusedSourceSentence(refused, station, stationName(station, one.setup.plan.station))}</Notice>
      )}
      <div className="sitting-acts row">
        <TryButtons session={session} one={one} />
        {session.plan.pauseAllowed && (
          <Button disabled={isTryBegun} onClick={() => session.pause(pageTime.now())}>
            Pause
          </Button>
        )}
        <BreakOff session={session} />
      </div>
    </section>
  );
}
