import { useSelector } from "@xstate/react";
import { SERVICE } from "../../../service/serviceValues";
import { leftOut } from "../../../service/visitFault";
import type { VisitFault } from "../../../service/visitFaultCode";
import { INSTRUMENT_WORDS, LOOK_WORDS, QUESTION_WORDS, SECTION_TITLES } from "../../../service/visitNames";
import { countText } from "../../../wording/amountWords";
import { Lines } from "../../parts/Lines";
import { memoryOf } from "../../parts/page/ofChart";
import type { VisitProps } from "./VisitActs";

function todo(fault: VisitFault): string {
  switch (fault.code) {
    case "not-asked":
      return `Ask: "${QUESTION_WORDS[fault.about]}"`;
    case "section-not-read":
      return `Read: ${SECTION_TITLES[fault.about]}`;
    case "last-record-not-read":
      return "Read: Last service record";
    case "look-left-out":
      return LOOK_WORDS[fault.about];
    case "not-measured":
      return INSTRUMENT_WORDS[fault.about];
    default:
      return "";
  }
}

/** What is left to inspect before anything is changed: by name with full help, counted with counts, nothing when silent. */
export function VisitHelp({ session }: VisitProps) {
  const { isDisturbed, openings } = useSelector(session.visit.chart, memoryOf);
  const { help } = session.setup;
  if (help === "silent") return null;
  const left = leftOut(session.visit);
  return (
    <section className="panel stack" aria-label="Help">
      <h2>Help</h2>
      <p>
        {left.length === 0 ? "Everything is inspected." : `${countText(left.length, "thing")} left to inspect.`}{" "}
        {isDisturbed && `Opened ${openings} of ${SERVICE.proofs} times in a row since you last worked on the lock.`}
      </p>
      {help === "full" && left.length > 0 && <Lines className="plain stack gap-1 text-small" of={left.map(todo)} />}
    </section>
  );
}
