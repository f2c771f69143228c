import { useEffect, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { drawRunSeed } from "../../../../handover/run/begunRun";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import { weightOf, withWeight } from "../../../hand/dial/dialAddress";
import { useHandStore } from "../../../hand/useHandStore";
import { WeightChoice } from "../../../hand/WeightChoice";
import { useKeptJobs } from "../../../keeping/useKeptJobs";
import { useLogbook } from "../../../keeping/useLogbook";
import { onPageLeft } from "../../../parts/page/onPageLeft";
import { watchWork } from "../../../parts/page/underWay";
import type { HandoverViewProps } from "../parts/handoverViewProps";
import { Debrief } from "./Debrief";
import { GAUGE_HELPS } from "./FitWork";
import { ElsewhereNotice } from "./kept/ElsewhereNotice";
import { HandoverNotes } from "./kept/handoverNotes";
import { NotStored } from "./kept/NotStored";
import { recallHandover } from "./kept/recallHandover";
import { resumedRun } from "./kept/resumedRun";
import { RunKeeper } from "./kept/runKeeper";
import { RunCautions } from "./RunCautions";
import { RunSetupBar } from "./RunSetupBar";
import { RunWork } from "./RunWork";
import type { RunSetup } from "./session/doorWork";
import { HandoverSession } from "./session/handoverSession";
import { noted } from "./session/told";

/** A handover on the screen, and what keeps it. */
interface ShownRun {
  readonly session: HandoverSession;
  readonly keeper: RunKeeper;
}

function askedSetup({ query, chance }: HandoverViewProps): RunSetup {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === query.get("profile")) ?? SHIPPED_PROFILES[0];
  const seed = Number(query.get("seed") ?? drawRunSeed(chance));
  return {
    profile,
    seed: Number.isInteger(seed) ? seed : 1,
    isHandsOff: query.get("hands") === "off",
    isToFit: query.get("fit") === "first",
    weight: weightOf(query),
    help: GAUGE_HELPS.find(({ help }) => help === query.get("help"))?.help,
  };
}

/** Whether a kept run is the one that an address asks for, as far as it asks. */
function isAsked({ profile, seed, isHandsOff, isToFit }: RunSetup, query: URLSearchParams): boolean {
  const fit = isToFit ? "first" : "no";
  const has = { profile: profile.id, seed: String(seed), hands: isHandsOff ? "off" : "on", fit };
  return Object.entries(has).every(([key, value]) => !query.has(key) || query.get(key) === value);
}

/** The run that goes on: the one kept here, unless the address asks for another. */
async function firstRun(props: HandoverViewProps): Promise<ShownRun> {
  const asked = askedSetup(props);
  const { kept, mark, problem } = await recallHandover(({ kept: { run } }) =>
    isAsked({ ...run, isToFit: run.fitting !== undefined }, props.query),
  );
  const keeper = new RunKeeper({ kept, mark });
  const keep = keeper.keep.bind(keeper);
  const session = kept === null ? new HandoverSession(asked, null, keep) : resumedRun(kept, asked, keep);
  if (problem !== null) session.tell(noted(problem));
  return { session, keeper };
}

/** Says, before a reload, what becomes of a handover that has begun. */
function useToldBeforeReload(session: HandoverSession | null): void {
  const problem = useLogbook()?.logbook.problem ?? null;
  useEffect(
    () =>
      watchWork(() => {
        if (session === null || !session.isBegun || session.run.isHandedOver) return null;
        return problem === null
          ? "The handover you are in is saved. Open Handover again, and you go on where you left it."
          : "The handover you are in may be lost, because this browser does not store it.";
      }),
    [session, problem],
  );
}

/** Keeps the run in hand when the page is left, for another page of ours too. */
function useKeptAtLeaving(session: HandoverSession | null): void {
  const current = useRef(session);
  useEffect(() => {
    current.current = session;
    return onPageLeft(() => session?.keepIfBegun());
  }, [session]);
  useEffect(() => () => current.current?.keepIfBegun(), []);
}

function Run({ session }: { readonly session: HandoverSession }) {
  useHandStore(session);
  useKeptJobs(session, HandoverNotes);
  const [isLookingBack, setIsLookingBack] = useState(session.run.isHandedOver);
  const debrief = useRef<HTMLElement>(null);
  const door = useRef<HTMLDivElement>(null);
  const lookBack = () => {
    flushSync(() => setIsLookingBack(true));
    debrief.current?.focus({ preventScroll: true });
    debrief.current?.scrollIntoView();
  };
  const goOn = () => {
    setIsLookingBack(false);
    // The button that was pressed goes with the debrief.
    door.current?.focus();
  };
  return (
    <>
      <div ref={door} tabIndex={-1}>
        <RunWork session={session} isOnce={false} onLookBack={lookBack} />
      </div>
      <div className="pt-3 ruled print:hidden">
        <RunCautions ids={["instructions", "licensed"]} />
      </div>
      {isLookingBack && <Debrief session={session} onUndone={goOn} ref={debrief} />}
    </>
  );
}

/** The address that asks for a run, so that a reload, or a link to it, asks for this one. */
const addressOf = ({ profile, seed, isHandsOff, isToFit, weight = "usual", help }: RunSetup) => {
  const hands = isHandsOff ? "off" : "on";
  const fit = isToFit ? `&fit=first${help === undefined ? "" : `&help=${help}`}` : "";
  return withWeight(`#/handover?view=run&profile=${profile.id}&seed=${seed}&hands=${hands}${fit}`, weight);
};

/** The run on the screen: looked for when the page begins, and again when the address asks for another. */
function useShownRun(props: HandoverViewProps) {
  const [shown, setShown] = useState<ShownRun | null>(null);
  const [count, setCount] = useState(0);
  const latest = useRef({ shown, props });
  latest.current = { shown, props };
  const show = (next: ShownRun | null) => {
    setShown(next);
    setCount((before) => before + 1);
  };
  const address = `${props.query}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the address stands for all that is asked
  useEffect(() => {
    const { shown: before, props: now } = latest.current;
    const isSame = (setup: RunSetup) => isAsked(setup, now.query) && setup.weight === weightOf(now.query);
    if (before !== null && isSame(before.session.setup)) return;
    let isWanted = true;
    before?.session.keepIfBegun();
    firstRun(now).then((next) => isWanted && show(next));
    return () => {
      isWanted = false;
    };
  }, [address]);
  return { shown, show, count };
}

/** The whole duty, from a fresh lock to a signed-off door. */
export function RunView(props: HandoverViewProps) {
  const { shown, show, count } = useShownRun(props);
  useKeptAtLeaving(shown?.session ?? null);
  useToldBeforeReload(shown?.session ?? null);
  if (shown === null) return <p className="text-small text-soft">Looking for a saved handover …</p>;
  const start = (setup: RunSetup) => {
    if (!shown.session.run.isHandedOver) shown.keeper.discard();
    const keeper = new RunKeeper();
    const session = new HandoverSession(setup, null, keeper.keep.bind(keeper));
    // At once: a reload must not bring back the run that was discarded.
    session.keepNow();
    show({ session, keeper });
    location.replace(addressOf(setup));
  };
  return (
    <>
      <RunSetupBar session={shown.session} onStart={start} newSeed={() => drawRunSeed(props.chance)} />
      <NotStored />
      <ElsewhereNotice key={`${count} elsewhere`} session={shown.session} keeper={shown.keeper} />
      <Run key={count} session={shown.session} />
      <WeightChoice query={props.query} />
    </>
  );
}
