import type { Graduations, Turn } from "../../lock/dial";
import { RING_TRAVEL } from "../../zeroing/ringClamp";
import { settlingSpread } from "../../zeroing/zeroingMachine";
import { notSetWords } from "../../zeroing/zeroWords";
import { focusDial } from "../dial/focusDial";
import { lastWords } from "./lastWords";
import { ZeroResultView } from "./ZeroResultView";
import type { ZeroingSession } from "./zeroingSession";

/** Where the index stands with respect to the scribed line, to a tenth. */
function indexPlace(error: Graduations): string {
  const size = Math.abs(error).toFixed(1);
  return size === "0.0"
    ? "the index stands on the line"
    : `the index stands ${size} graduations ${error > 0 ? "left" : "right"} of the line`;
}

/** Turns the ring on the case: a slider, nudges, and the clamp. */
export function RingControls({ session }: { readonly session: ZeroingSession }) {
  const { lock } = session;
  return (
    <>
      <p>
        The ring is loose. Turn it until its index stands under the line scribed on the case, then clamp it. It creeps a
        little as it is clamped: look again.
      </p>
      <div className="zeroing-ring">
        <label htmlFor="ring-turn">Ring</label>
        <input
          id="ring-turn"
          type="range"
          min={-RING_TRAVEL}
          max={RING_TRAVEL}
          step={0.05}
          value={-lock.ringTurn}
          aria-valuetext={`turned ${Math.abs(lock.ringTurn).toFixed(2)} ${lock.ringTurn < 0 ? "right" : "left"}; ${indexPlace(lock.indexError)}`}
          onChange={(event) => session.turnRing(-Number(event.currentTarget.value) - lock.ringTurn)}
        />
        <button
          type="button"
          className="button"
          onClick={() => session.turnRing(0.05)}
          aria-label="Nudge the ring left"
        >
          ↺ nudge
        </button>
        <button
          type="button"
          className="button"
          onClick={() => session.turnRing(-0.05)}
          aria-label="Nudge the ring right"
        >
          nudge ↻
        </button>
      </div>
      <p>
        <button
          type="button"
          className="button primary"
          onClick={() => {
            session.clampRing();
            focusDial();
          }}
        >
          Clamp the ring
        </button>
      </p>
    </>
  );
}

function SeriesView({ session, side }: { readonly session: ZeroingSession; readonly side: Turn }) {
  const { wanted, accepted } = session.memory;
  const { captureWindow, approach } = session.setup.rules;
  return (
    <>
      <p>
        Turn {side} only onto zero, at least {approach} graduations without turning back, stop, let the dial rest, and
        take the reading. Up to {captureWindow} off it counts.{" "}
        {session.setup.rules.consecutive ? "A miss costs the whole side." : "A miss costs nothing but another turn."} A
        peg outside its arc: the dial stood left of zero; inside: right of it.
      </p>
      <p className="zeroing-note">
        {accepted[side].length} of {wanted[side]} readings turning {side} · refused so far{" "}
        {session.memory.refused[side]}
      </p>
      <p className="zeroing-buttons">
        <button
          type="button"
          className="button"
          onClick={() => {
            session.restartSeries();
            focusDial();
          }}
        >
          This side again
        </button>
        <button type="button" className="button" onClick={() => session.loosenRing()}>
          Loosen the ring
        </button>
      </p>
    </>
  );
}

const CAUTIONS = [
  "Door open, and someone able to open it from the inside, until the lock has been proved.",
  "The maker's written instructions decide how a real lock is zeroed, and how often.",
  "Where covers come off, touch bare metal first: electronics die of static.",
];

function Cautions() {
  return (
    <ul className="zeroing-list zeroing-note">
      {CAUTIONS.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}

function NotSet({ session }: { readonly session: ZeroingSession }) {
  const { rules } = session.setup;
  const { accepted } = session.memory;
  const isWide = (one: Turn) => settlingSpread(accepted[one], rules) > rules.spreadLimit;
  const side = rules.order.find((one) => accepted[one].length >= rules.most && isWide(one)) ?? rules.order[0];
  return (
    <>
      <p className="zeroing-headline">{notSetWords(side, accepted[side], rules)}</p>
      <button type="button" className="button primary" onClick={() => session.again()}>
        Begin again
      </button>{" "}
      <button type="button" className="button" onClick={() => session.loosenRing()}>
        Loosen the ring
      </button>
    </>
  );
}

/** The calibration itself: ring, series, result. What the last reading came to is spoken at once. */
export function SetZeroPanel({ session, now }: { readonly session: ZeroingSession; readonly now: number }) {
  const { asked, state } = session;
  return (
    <section className="panel zeroing-panel" aria-label="Set zero">
      <h2>
        Set zero <small>{TITLES[state]}</small>
      </h2>
      <p className="zeroing-last" role="status" data-testid="zeroing-last">
        {lastWords(session)}
      </p>
      {state === "ringLoose" && <RingControls session={session} />}
      {asked !== null && <SeriesView session={session} side={asked} />}
      {state === "notSet" && <NotSet session={session} />}
      {state === "zeroSet" && <ZeroResultView session={session} now={now} />}
      {state !== "zeroSet" && <Cautions />}
    </section>
  );
}

const TITLES = {
  ringLoose: "first the ring",
  firstSeries: "the first side",
  secondSeries: "the other side",
  zeroSet: "both sides are set",
  notSet: "not set",
} as const;
