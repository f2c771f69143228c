import { useSelector } from "@xstate/react";
import type { Assembly } from "../../../fitting/assembly";
import { type Board, type SelfCheck, selfCheckOf } from "../../../fitting/board";
import { doorJoints, type Fit } from "../../../fitting/fit";
import { checksOf } from "../../../fitting/fitChecks";
import { fitFaults } from "../../../fitting/fitFault";
import type { FitFault } from "../../../fitting/fitFaultCode";
import { checksText, FAULT_WORDS, foundByText } from "../../../fitting/fitWords";
import { countText } from "../../../wording/amountWords";
import { fitQuery, withWeight } from "../../hand/dial/dialAddress";
import { Button } from "../../parts/controls/Button";
import { Fold } from "../../parts/Fold";
import { memoryOf } from "../../parts/page/ofChart";
import { signedText } from "../../parts/signedText";
import { AfterUse } from "./AfterUse";
import type { FittingSession } from "./fittingSession";
import { STAGE_WORDS } from "./fittingWords";
import { NumbersPlot } from "./plots/NumbersPlot";
import { RingPlot } from "./plots/RingPlot";

/** The exercise with this lock: its zero is set, where it has one; else it is dialed. */
function nextAddressOf({ profile }: FittingSession, fit: Fit): string {
  const joints = doorJoints(fit, profile.graduations);
  const page = profile.kind === "dial-encoder" ? "zeroing" : "bench";
  return withWeight(
    `#/${page}?profile=${profile.id}${fitQuery(joints)}&from=fitting`,
    fit.drag > 1 ? "heavy" : "usual",
  );
}

interface FaultsProps {
  readonly faults: readonly FitFault[];
  readonly assembly: Assembly;
}

/** What is wrong with a fit, what it does to the lock, and what to do about it. */
export function Faults({ faults, assembly }: FaultsProps) {
  if (faults.length === 0) return <p>Nothing is wrong with this fit.</p>;
  return (
    <ol className="stack">
      {faults.map((fault) => {
        const { what, does, fix } = FAULT_WORDS[fault];
        return (
          <li key={fault}>
            <strong>{what}</strong> {does} <em>Fix:</em> {fix}{" "}
            <span className="text-small text-soft">Found by: {foundByText(fault, assembly)}.</span>
          </li>
        );
      })}
    </ol>
  );
}

/** What an electronic lock makes of the dial as it is. */
const ELECTRONICS: Readonly<Record<SelfCheck, string>> = {
  passes: "The self-check passes: the lock reads its dial.",
  silent: "The lock is dead: it reads nothing, and no number opens it.",
  "no-encoder": "The lock does not find its dial: it reads nothing, and no number opens it.",
  unsteady: "Readings wander while the dial is at rest: no zero holds, and a number dialed right may be refused.",
};

/** What was done to the board, and what it does to what is read. */
function BoardEffects({ board }: { readonly board: Board }) {
  const { bareTouches } = board;
  return (
    <>
      <li>{ELECTRONICS[selfCheckOf(board)]}</li>
      {bareTouches > 0 && (
        <li>
          You touched the board {bareTouches === 1 ? "once" : `${bareTouches} times`} without the wrist strap. Static
          can harm it, and it may show only later.
        </li>
      )}
    </>
  );
}

/** What is smaller than this shows as zero in the figures, graduations. */
const SHOWN = 0.005;

interface EffectsProps {
  readonly fit: Fit;
  readonly board: Board | null;
  readonly perTurn: number;
}

/** How heavy the dial is, and where. */
function dragText(fit: Fit, perTurn: number): string {
  const { catching } = doorJoints(fit, perTurn);
  const allRound = `Drag: the hand gets ${fit.drag.toFixed(1)} graduations ahead of the dial`;
  if (catching === undefined) return `${allRound}.`;
  const { at, arc, drag } = catching;
  return `${allRound}, and ${drag.toFixed(1)} more once a turn, for ${arc.toFixed(0)} graduations around ${at.toFixed(0)}, where the key rides on the lever.`;
}

/** What the fit does to what is read and dialed. */
function Effects({ fit, board, perTurn }: EffectsProps) {
  const { openingReads, changingReads, numbersOff, runout } = fit;
  const between = changingReads === null ? null : changingReads - openingReads;
  const goesRound = runout.size > SHOWN;
  return (
    <ul className="stack text-small">
      <li>
        {goesRound
          ? `The opening index is off by ${signedText(openingReads - runout.size, 2)} to ${signedText(openingReads + runout.size, 2)} graduations as the dial goes round, ${signedText(openingReads, 2)} on average. Turning the ring, or setting zero, compensates for the average alone: the spindle is bent, and the rest goes round with the dial.`
          : `The opening index is off by ${signedText(openingReads, 2)} graduations, wherever the dial is. Turning the ring, or setting zero, compensates for this.`}
      </li>
      {between !== null && (
        <li>
          {Math.abs(between) < SHOWN ? (
            "The changing index then reads right: the ring is centered."
          ) : (
            <>
              The changing index is then still off by {signedText(between, 2)} graduations
              {goesRound && " on average"}. No zero compensates for this: it comes from a ring off center.
            </>
          )}
        </li>
      )}
      {numbersOff !== 0 && (
        <li>
          The key puts every number {Number(numbersOff.toFixed(2))} graduations off.
          {board !== null && " Setting zero compensates for this, but the dial no longer reads 0 at the cam's mark."}
        </li>
      )}
      {board !== null && <BoardEffects board={board} />}
      <li>{dragText(fit, perTurn)}</li>
      {fit.binding > 0 && (
        <li>
          Draw: {fit.bolt_mm.toFixed(1)} mm of the bolt runs on the edge of the strike. The hand gets{" "}
          {fit.binding.toFixed(1)} graduations farther ahead before the bolt comes, and again after each pull.
        </li>
      )}
      <li>
        Lost motion: {fit.lostMotion.toFixed(2)} graduations
        {fit.playGrows > 0 && `, and ${fit.playGrows.toFixed(1)} graduations more in every thousand turns`}.
      </li>
    </ul>
  );
}

interface WaysOnProps {
  readonly session: FittingSession;
  readonly isGood: boolean;
  /** Whether its zero can be set, or the lock dialed. */
  readonly takesNumbers: boolean;
}

/** What may follow: a good fit goes on to its zero or to the bench, another is put right first. */
function WaysOn({ session, isGood, takesNumbers }: WaysOnProps) {
  const { declared } = useSelector(session.chart, memoryOf);
  const { fit } = session;
  return (
    <div className="row">
      {declared !== "spent" && (
        <Button className={isGood ? "" : "primary"} onClick={() => session.goOn()}>
          Go on fitting
        </Button>
      )}
      <Button onClick={() => session.again()}>Start again, on another door</Button>
      {fit !== null && takesNumbers && (
        <a className={isGood ? "button primary" : "button"} href={nextAddressOf(session, fit)}>
          {session.profile.kind === "dial-encoder" ? "Set this lock's zero" : "Dial this lock on the bench"}
        </a>
      )}
    </div>
  );
}

/** What the fit is, which checks were skipped, and what it does to the lock. */
export function FitDebrief({ session }: { readonly session: FittingSession }) {
  const { checks, declared } = useSelector(session.chart, memoryOf);
  const { fit, assembly, lock } = session;
  if (declared === null) return null;
  const faults = fit === null ? [] : fitFaults(fit, assembly, lock.sizes);
  const skipped = checksOf(assembly).filter((check) => !checks.includes(check));
  const takesNumbers = assembly.board === null || selfCheckOf(assembly.board) === "passes";
  return (
    <section className="panel stack" aria-label="Debrief">
      <h2 tabIndex={-1}>Debrief {faults.length > 0 && <small>{countText(faults.length, "fault")}</small>}</h2>
      {fit === null ? <p>{STAGE_WORDS.spent}</p> : <Faults faults={faults} assembly={assembly} />}
      <p>
        {skipped.length === 0
          ? "You made every check."
          : `Checks you did not make on this fit: ${checksText(skipped, assembly)}.`}
      </p>
      {!takesNumbers && <p>There is no zero to set until the self-check passes.</p>}
      <WaysOn session={session} isGood={faults.length === 0} takesNumbers={takesNumbers} />
      {fit !== null && (
        <Fold title={<strong>What the lock does now, number by number</strong>}>
          <div className="stack">
            <Effects fit={fit} board={assembly.board} perTurn={lock.perTurn} />
            <AfterUse fit={fit} sizes={lock.sizes} profile={session.profile} />
            <RingPlot assembly={assembly} lock={lock} />
            <NumbersPlot fit={fit} perTurn={lock.perTurn} />
          </div>
        </Fold>
      )}
      <p className="text-soft text-small">Practice result, not a certificate.</p>
    </section>
  );
}
