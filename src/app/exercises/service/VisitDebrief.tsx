import { useEffect, useRef } from "react";
import { leftOut, visitFaults } from "../../../service/visitFault";
import type { VisitFault } from "../../../service/visitFaultCode";
import { faultWords, WRONG_WORDS } from "../../../service/visitFaultWords";
import { foundIn } from "../../../service/visitResult";
import type { Condition } from "../../../service/wrongThing";
import { countText } from "../../../wording/amountWords";
import { Button } from "../../parts/controls/Button";
import { Fold } from "../../parts/Fold";
import type { VisitProps } from "./VisitActs";
import { brokenText, decidedBy } from "./visitPapersWords";

/** What was wrong with the lock, whether it was found and set right, and what decides it. */
function LockTold({ session: { visit } }: VisitProps) {
  const { conditions, instructions, lock } = visit.task;
  if (conditions.length === 0) {
    return <p>Nothing was wrong with this lock. The right work was to measure, prove, record and leave it alone.</p>;
  }
  const found = foundIn(visit);
  const outcome = (one: Condition) =>
    `${found.includes(one) ? "You found it." : "You missed it."} ${visit.wrong.includes(one) ? "It is still wrong." : "You set it right."}`;
  return (
    <ul className="stack">
      {conditions.map((one) => (
        <li key={one}>
          <strong>{WRONG_WORDS[one].what}</strong> {outcome(one)} The instructions say: "
          {decidedBy(one, instructions, lock)}"
        </li>
      ))}
    </ul>
  );
}

interface FaultsProps extends VisitProps {
  readonly title: string;
  readonly faults: readonly VisitFault[];
}

function Faults({ session, title, faults }: FaultsProps) {
  if (faults.length === 0) return null;
  return (
    <section aria-label={title}>
      <Fold title={<strong>{`${title}: ${faults.length}`}</strong>}>
        <ol className="stack">
          {faults.map((fault) => {
            const { what, does, fix } = faultWords(fault);
            const broken = brokenText(fault, session.visit);
            return (
              <li key={`${fault.code} ${fault.about}`}>
                <strong>{what}</strong> {does} {broken !== "" && `The instructions say: "${broken}" `}
                <em>Next time:</em> {fix}
              </li>
            );
          })}
        </ol>
      </Fold>
    </section>
  );
}

/** What was wrong with the lock, what was found and set right, and what the visit did wrong or left out. */
export function VisitDebrief({ session }: VisitProps) {
  const faults = visitFaults(session.visit);
  const leftOutCodes = new Set(leftOut(session.visit).map(({ code }) => code));
  const isLeftOut = ({ code }: VisitFault) => leftOutCodes.has(code);
  const heading = useRef<HTMLHeadingElement>(null);
  // The button that showed it is gone: reading goes on at its top.
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className="panel stack w-full" aria-label="Debrief">
      <h2 ref={heading} tabIndex={-1}>
        Debrief <small>{session.profile.title}</small>
      </h2>
      <p>
        <strong>
          {faults.length === 0
            ? "Nothing is wrong with this visit."
            : `This visit has ${countText(faults.length, "fault")}.`}
        </strong>
      </p>
      <LockTold session={session} />
      <div className="row">
        <Button className="primary" onClick={() => session.again()}>
          Next visit, to another lock
        </Button>
      </div>
      <Faults session={session} title="What went wrong" faults={faults.filter((one) => !isLeftOut(one))} />
      <Faults session={session} title="What you left out" faults={faults.filter(isLeftOut)} />
      <p>The maker's written instructions decide. They differ from lock to lock: read them on every visit.</p>
      <p className="text-soft text-small">Practice result, not a certificate.</p>
    </section>
  );
}
