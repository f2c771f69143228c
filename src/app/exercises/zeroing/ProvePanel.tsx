import { useSelector } from "@xstate/react";
import type { Attempt } from "../../../dialing/attempt";
import type { DialingState } from "../../../dialing/dialingMachine";
import { faceText } from "../../../dialing/words";
import { stateOf } from "../../parts/page/ofChart";
import { useStore } from "../../parts/page/useStore";
import { signedText } from "../../parts/signedText";
import { TextTable } from "../../parts/TextTable";
import type { ProveSession } from "./session/proveSession";
import { SOURCES, shareWords } from "./shareWords";

const ENDED: Partial<Record<DialingState, string>> = {
  open: "Opened: the zero you set holds.",
  thrown: "Opened: the zero you set holds.",
  secured: "Opened: the zero you set holds.",
  failed: "It did not open. The table shows what was off.",
};

const verdictText = (attempt: Attempt, state: DialingState) =>
  ENDED[state] ??
  (attempt.reader.legs.length > 0 ? "Dialing." : "Dial the combination on the lock you have just zeroed.");

/** Where one goes from a lock that opened. */
const OnFromHere = ({ lock }: { readonly lock: string }) => (
  <p className="mt-3">
    Next: <a href={`#/handover?view=run&profile=${lock}`}>hand such a lock over</a>, or{" "}
    <a href={`#/fitting?profile=${lock}`}>fit another dial</a>.
  </p>
);

/** The lock dialed with the zero just set: every stop error split into the zero's part and the hand's. */
export function ProvePanel({ prove }: { readonly prove: ProveSession }) {
  useStore(prove);
  const { profile, attempt } = prove;
  const state = useSelector(prove.chart, stateOf);
  const shares = prove.shares();
  const runsOut = prove.lock.condition.runout !== undefined;
  const sources = SOURCES.filter(({ of }) => runsOut || of !== "fromFit");
  return (
    <section className="panel" aria-label="Prove it">
      <h2>
        Prove it <small>the lock counts from your zero</small>
      </h2>
      <p className="zeroing-headline text-title" role="status">
        {verdictText(attempt, state)}
      </p>
      <TextTable
        className="zeroing-table mt-3"
        head={["number", "the lock saw", ...sources.map(({ name }) => `from ${name}`), "result"]}
        rows={shares.map((share) => [
          faceText(share.number, profile),
          signedText(share.total),
          ...sources.map(({ of }) => signedText(share[of])),
          shareWords(share, profile.stopTolerance),
        ])}
      />
      {state in ENDED && state !== "failed" && <OnFromHere lock={profile.id} />}
      <p className="mt-3 text-small text-soft">
        Graduations along the turn; plus ran past. This lock takes ±{profile.stopTolerance}.
        {runsOut && (
          <>
            {" "}
            This dial is off its axis: what it reads wrong goes round with it, and a zero takes that away at zero alone.
            A straight spindle fixes it: <a href={`#/fitting?profile=${profile.id}`}>take the lock apart again</a>.
          </>
        )}
      </p>
    </section>
  );
}
