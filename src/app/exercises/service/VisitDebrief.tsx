import { useEffect, useRef } from "react";
import { visitFaults } from "../../../service/visitFault";
import { faultWords, WRONG_WORDS } from "../../../service/visitFaultWords";
import { foundIn } from "../../../service/visitResult";
import { Button } from "../../parts/controls/Button";
import type { VisitProps } from "./VisitActs";

/** What was wrong with the lock, what was found and set right, and what the visit left out or made worse. */
export function VisitDebrief({ session }: VisitProps) {
  const { visit } = session;
  const { conditions } = visit.task;
  const faults = visitFaults(visit);
  const found = foundIn(visit);
  const heading = useRef<HTMLHeadingElement>(null);
  // The button that showed it is gone: reading goes on at its top.
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className="panel stack" aria-label="Debrief">
      <h2 ref={heading} tabIndex={-1}>
        Debrief
      </h2>
      {conditions.length === 0 ? (
        <p>Nothing was wrong with this lock. The right work was to measure, prove, record and leave it alone.</p>
      ) : (
        <ul className="stack">
          {conditions.map((condition) => (
            <li key={condition}>
              <strong>{WRONG_WORDS[condition].what}</strong>{" "}
              {found.includes(condition) ? "You found it." : "You missed it."}{" "}
              {visit.wrong.includes(condition) ? "It is still so." : "You set it right."}
            </li>
          ))}
        </ul>
      )}
      {faults.length === 0 ? (
        <p>Nothing is wrong with this visit.</p>
      ) : (
        <ol className="stack">
          {faults.map((fault) => {
            const { what, does, fix } = faultWords(fault);
            return (
              <li key={`${fault.code} ${fault.about}`}>
                <strong>{what}</strong> {does} <em>Next time:</em> {fix}
              </li>
            );
          })}
        </ol>
      )}
      <p>The maker's written instructions decide. They differ from lock to lock: read them on every visit.</p>
      <p className="text-soft text-small">Practice result, not a certificate.</p>
      <div className="row">
        <Button onClick={() => session.again()}>Next visit, to another lock</Button>
      </div>
    </section>
  );
}
