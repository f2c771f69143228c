import { useSelector } from "@xstate/react";
import { useCallback, useEffect, useMemo, useState } from "react";
import type { Sheet } from "../../drill/sheet/sheet";
import { sheetAskedFor } from "../keeping/sheets/sheetChoice";
import { Button } from "../parts/controls/Button";
import { focusHeading } from "../parts/page/focusHeading";
import { messageOf } from "../parts/page/messageOf";
import { stateOf } from "../parts/page/ofChart";
import { useStore } from "../parts/page/useStore";
import { BeforeStart } from "./choose/BeforeStart";
import { ChooseSheet } from "./choose/ChooseSheet";
import { RecordView } from "./result/RecordView";
import { ResultView } from "./result/ResultView";
import { type CurrentSitting, currentSitting } from "./session/currentSitting";
import type { SittingSession } from "./session/sittingSession";
import { QuestionView } from "./stations/QuestionView";
import { StandingView } from "./stations/StandingView";
import { StationView } from "./stations/StationView";
import "../parts/workplace.css";
import "./sittings.css";

/** What an address asks for: a sheet, or the reason why there is none. */
interface Asked {
  readonly sheet: Sheet | null;
  readonly problem: string | null;
}

function askedFor(address: string | null): Asked {
  if (address === null) return { sheet: null, problem: null };
  try {
    return { sheet: sheetAskedFor(address), problem: null };
  } catch (error) {
    return { sheet: null, problem: messageOf(error) };
  }
}

/** The seed that an address gives, a whole number; null where it gives none. */
function seedAsked(seed: string | null): number | null {
  return seed !== null && /^\d{1,10}$/.test(seed) ? Number(seed) : null;
}

/** Puts the sitting away with the address that asked for it, so that neither a reload nor the same link is lost on it. */
function leave(current: CurrentSitting): void {
  current.putAway();
  location.replace("#/sittings");
}

/** A link asks for a sheet while another sitting is here: says what goes first, and that nothing is ended by the link. */
function Elsewhere({ asked, current }: { readonly asked: Sheet | null; readonly current: CurrentSitting }) {
  const { session } = current;
  const [closed, setClosed] = useState<Sheet | null>(null);
  if (closed === asked) return null;
  if (asked === null || session === null || current.isFree || session.sheet.title === asked.title) return null;
  const next = session.isOver ? "Press Done below" : "Finish it or break it off";
  return (
    <div className="notice flex items-start justify-between gap-4 mx-5 mt-4">
      <p role="status">
        You asked for "{asked.title}", but "{session.sheet.title}" is still here. {next}, then open the link again.
      </p>
      <Button className="flex-none" aria-label="Close this message" onClick={() => setClosed(asked)}>
        Close
      </Button>
    </div>
  );
}

/** The part of the screen that the sitting is at. */
function SittingView({ current, session }: { readonly current: CurrentSitting; readonly session: SittingSession }) {
  const onLeave = () => leave(current);
  const state = useSelector(session.chart, stateOf);
  switch (state) {
    case "readingInstructions":
    case "ready":
      return <BeforeStart current={current} session={session} onLeave={onLeave} />;
    case "atStation":
      return <StationView session={session} />;
    case "answering":
      return <QuestionView session={session} />;
    case "paused":
    case "interrupted":
      return <StandingView session={session} />;
    case "finished":
    case "brokenOff":
      return <ResultView current={current} session={session} onLeave={onLeave} />;
  }
}

interface SittingsScreenProps {
  /** Seed in the address, for practice, or null. */
  readonly seed: string | null;
  /** Id of a shipped sheet, or the text of a link; null to choose. */
  readonly sheet: string | null;
  /** Id of an earlier sitting that is to be shown again, or null. */
  readonly record: string | null;
}

/** Sittings: a timed self-test by a sheet, from its choice to its result. */
export function SittingsScreen({ seed, sheet, record }: SittingsScreenProps) {
  const current = useStore(useMemo(currentSitting, []));
  const asked = useMemo(() => askedFor(sheet), [sheet]);
  const begin = useCallback((chosen: Sheet) => current.begin(chosen, seedAsked(seed)), [current, seed]);
  const { session, endedId, isSettled } = current;
  useEffect(() => {
    // A link begins its sheet, but never in the place of a sitting that has begun or still shows its result.
    if (asked.sheet !== null && isSettled && current.isFree) begin(asked.sheet);
  }, [asked, current, isSettled, begin]);
  useEffect(() => {
    // What led here is gone, and neither a choice nor instructions take the focus: reading begins at the heading.
    const takesNone = isSettled && (session === null || current.isFree);
    if (takesNone && document.activeElement === document.body) focusHeading();
  }, [current, session, isSettled]);
  return (
    <main>
      <h1 className="visually-hidden" tabIndex={-1}>
        Sittings
      </h1>
      {record !== null && <RecordView key={record} current={current} id={record} />}
      {record === null && session !== null && <SittingView current={current} session={session} />}
      {record === null && <Elsewhere asked={asked.sheet} current={current} />}
      {record === null && endedId !== null && (
        <RecordView key={endedId} current={current} id={endedId} onLeave={() => leave(current)} />
      )}
      {record === null && session === null && endedId === null && isSettled && (
        <ChooseSheet current={current} problem={asked.problem ?? current.problem} onChoose={begin} />
      )}
    </main>
  );
}
