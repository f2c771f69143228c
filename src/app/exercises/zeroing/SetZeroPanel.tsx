import { useSelector } from "@xstate/react";
import type { Turn } from "../../../lock/dial";
import { settlingSpread } from "../../../zeroing/zeroingMachine";
import { notSetWords, seriesWords } from "../../../zeroing/zeroWords";
import { focusDial } from "../../hand/dial/focusDial";
import { Button } from "../../parts/controls/Button";
import { Lines } from "../../parts/Lines";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import { WordLink } from "../../words/WordLink";
import { WordsHere } from "../../words/WordsHere";
import { lastWords } from "./lastWords";
import { indexPlace } from "./ring/RingControls";
import type { ZeroingSession } from "./session/zeroingSession";
import { ZeroResultView } from "./ZeroResultView";

/** What is to be done with the loose ring; its controls are beside the dial. */
export function RingWords({ session }: { readonly session: ZeroingSession }) {
  return (
    <>
      <p>
        The ring is loose. Turn it until its index is under the line on the case: drag the ring, or use the slider above
        the dial. Then clamp it. It creeps a little as you clamp it, so look again.
      </p>
      <p className="mt-3 text-small text-soft" role="status">
        Now {indexPlace(session.lock.indexError)}.
      </p>
    </>
  );
}

function SeriesView({ session, side }: { readonly session: ZeroingSession; readonly side: Turn }) {
  const { wanted, accepted, refused } = useSelector(session.chart, memoryOf);
  const { captureWindow, approach } = session.setup.rules;
  return (
    <>
      <p>
        Turn {side} only, onto zero, for at least {approach} graduations without turning back. Stop, let the dial rest,
        and record the stop. Stops within {captureWindow} graduations of zero count.{" "}
        {session.setup.rules.consecutive ? "One miss restarts this side." : "After a miss, make another turn."}
      </p>
      <p className="mt-3 text-small text-soft" data-testid="zeroing-series">
        {seriesWords(side, accepted[side], wanted[side], session.setup.rules)} Not counted so far: {refused[side]}.
      </p>
      <p className="row mt-4">
        <Button
          onClick={() => {
            session.restartSeries();
            focusDial();
          }}
        >
          Restart this side
        </Button>
        <Button onClick={() => session.loosenRing()}>Loosen the ring</Button>
      </p>
    </>
  );
}

/** What zero is for, in one sentence. */
const WHAT_FOR =
  "The lock counts every number from zero, so a zero that is off makes every number you dial off by the same amount.";

const CAUTIONS = [
  "Keep the door open until the lock is proved. Where people can enter, keep someone inside who can open, after you have tested the inside release.",
  "The maker's written instructions decide how a real lock is zeroed, and how often.",
  "Touch bare metal before you take covers off: static destroys electronics.",
];

function NotSet({ session }: { readonly session: ZeroingSession }) {
  const { rules } = session.setup;
  const { accepted } = useSelector(session.chart, memoryOf);
  const isWide = (one: Turn) => settlingSpread(accepted[one], rules) > rules.spreadLimit;
  const side = rules.order.find((one) => accepted[one].length >= rules.most && isWide(one)) ?? rules.order[0];
  return (
    <>
      <p className="zeroing-headline text-title">{notSetWords(side, accepted[side], rules)}</p>
      <Button className="primary" onClick={() => session.again()}>
        Start again
      </Button>{" "}
      <Button onClick={() => session.loosenRing()}>Loosen the ring</Button>
    </>
  );
}

/** The calibration itself: ring, series, result. What the last stop came to is spoken at once. */
export function SetZeroPanel({ session, now }: { readonly session: ZeroingSession; readonly now: number }) {
  const { asked } = session;
  const state = useSelector(session.chart, stateOf);
  return (
    <section className="panel zeroing-panel stack" aria-label="Set zero">
      <div className="spread">
        <h2>
          Set zero <small>{TITLES[state]}</small>
        </h2>
        <WordsHere>
          <WordLink word="zero">zero</WordLink>
          <WordLink word="lost-motion">lost motion</WordLink>
        </WordsHere>
      </div>
      <p>{WHAT_FOR}</p>
      <p className="font-semibold empty:-mb-3" role="status" data-testid="zeroing-last">
        {lastWords(session)}
      </p>
      {state === "ringLoose" && <RingWords session={session} />}
      {asked !== null && <SeriesView session={session} side={asked} />}
      {state === "notSet" && <NotSet session={session} />}
      {state === "zeroSet" && <ZeroResultView session={session} now={now} />}
      {state !== "zeroSet" && <Lines className="text-small text-soft" of={CAUTIONS} />}
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
