import { useEffect, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { HandoverNotes } from "../../logbook/handoverNotes";
import { useKeptJobs } from "../../logbook/useKeptJobs";
import { onPageLeft } from "../../shell/onPageLeft";
import { useStore } from "../../zeroing/useZeroing";
import type { HandoverViewProps } from "../HandoverScreen";
import { Debrief } from "./Debrief";
import { HandoverSession, type RunSetup } from "./handoverSession";
import { recallRun } from "./keptRun";
import { RunCautions } from "./RunCautions";
import { RunWork } from "./RunWork";
import { resumedRun } from "./resumedRun";
import { noted } from "./told";

const DEFAULT = SHIPPED_PROFILES.find(({ id }) => id === "three-wheel") ?? SHIPPED_PROFILES[0];
const SEEDS = 100_000;

function askedSetup({ query, chance }: HandoverViewProps): RunSetup | null {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === query.get("profile")) ?? DEFAULT;
  const seed = Number(query.get("seed") ?? Math.floor(chance() * SEEDS));
  if (profile === undefined) return null;
  return { profile, seed: Number.isInteger(seed) ? seed : 1, isHandsOff: query.get("hands") === "off" };
}

/** Whether a kept run is the one that an address asks for, as far as it asks. */
function isAsked({ profile, seed, isHandsOff }: RunSetup, query: URLSearchParams): boolean {
  const has = { profile: profile.id, seed: String(seed), hands: isHandsOff ? "off" : "on" };
  return Object.entries(has).every(([key, value]) => !query.has(key) || query.get(key) === value);
}

/** The run that goes on: the one kept here, unless the address asks for another. */
function firstSession(props: HandoverViewProps): HandoverSession | null {
  const asked = askedSetup(props);
  if (asked === null) return null;
  const { kept, problem } = recallRun();
  const goesOn = kept !== null && isAsked(kept.run, props.query);
  const session = goesOn ? resumedRun(kept, asked) : new HandoverSession(asked);
  if (problem !== null) session.tell(noted(problem));
  return session;
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

interface SetupBarProps {
  readonly session: HandoverSession;
  readonly onStart: (setup: RunSetup) => void;
  readonly newSeed: () => number;
}

function RunSetupBar({ session, onStart, newSeed }: SetupBarProps) {
  const { profile, seed, isHandsOff } = session.setup;
  const { door, lock } = session.recorded.scene;
  return (
    <div className="setup run-setup">
      <label>
        <span className="visually-hidden">Lock</span>
        <select
          className="field"
          value={profile.id}
          onChange={(event) => {
            const chosen = SHIPPED_PROFILES.find(({ id }) => id === event.currentTarget.value);
            if (chosen !== undefined) onStart({ profile: chosen, seed, isHandsOff });
          }}
        >
          {SHIPPED_PROFILES.map(({ id, title }) => (
            <option key={id} value={id}>
              {title}
            </option>
          ))}
        </select>
      </label>
      <button type="button" className="button" onClick={() => onStart({ profile, seed, isHandsOff })}>
        Start again
      </button>
      <button type="button" className="button" onClick={() => onStart({ profile, seed: newSeed(), isHandsOff })}>
        Another door
      </button>
      <button
        type="button"
        className="button"
        aria-pressed={isHandsOff}
        onClick={() => onStart({ profile, seed, isHandsOff: !isHandsOff })}
      >
        Hands off: a simulated hand dials
      </button>
      <small>
        {door}, {lock}, door number {seed}
      </small>
    </div>
  );
}

function Run({ session }: { readonly session: HandoverSession }) {
  useStore(session);
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
      <div className="run-whole" ref={door} tabIndex={-1}>
        <RunWork session={session} isOnce={false} onLookBack={lookBack} />
      </div>
      <div className="run-foot">
        <RunCautions ids={["instructions", "licensed"]} />
      </div>
      {isLookingBack && <Debrief session={session} onUndone={goOn} ref={debrief} />}
    </>
  );
}

/** The address that asks for a run, so that a reload, or a link to it, asks for this one. */
const addressOf = ({ profile, seed, isHandsOff }: RunSetup) =>
  `#/handover?view=run&profile=${profile.id}&seed=${seed}&hands=${isHandsOff ? "off" : "on"}`;

/** The whole duty, from a fresh lock to a signed-off door. */
export function RunView(props: HandoverViewProps) {
  const address = `${props.query}`;
  const [session, setSession] = useState(() => firstSession(props));
  const [count, setCount] = useState(0);
  const [followed, setFollowed] = useState(address);
  useKeptAtLeaving(session);
  if (session === null) return null;
  const show = (next: HandoverSession | null) => {
    setSession(next);
    setCount(count + 1);
  };
  if (followed !== address) {
    setFollowed(address);
    if (!isAsked(session.setup, props.query)) show(firstSession(props));
  }
  const start = (setup: RunSetup) => {
    const next = new HandoverSession(setup);
    // At once: a reload must not bring back the run that was put away.
    next.keepNow();
    show(next);
    location.replace(addressOf(setup));
  };
  return (
    <>
      <RunSetupBar session={session} onStart={start} newSeed={() => Math.floor(props.chance() * SEEDS)} />
      <Run key={count} session={session} />
    </>
  );
}
