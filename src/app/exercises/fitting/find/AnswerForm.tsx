import { useSelector } from "@xstate/react";
import { JOB_RULES } from "../../../../drill/marking/jobRule";
import type { FitFault } from "../../../../fitting/fitFaultCode";
import { FAULT_WORDS } from "../../../../fitting/fitWords";
import { faultsOn } from "../../../../fitting/inspect/faultDraws";
import { countText } from "../../../../wording/amountWords";
import { Button } from "../../../parts/controls/Button";
import { Check } from "../../../parts/controls/Check";
import { stateOf } from "../../../parts/page/ofChart";
import { FAULT_GROUPS } from "./findWords";
import type { InspectionSession } from "./inspectionSession";

interface AnswerFormProps {
  readonly session: InspectionSession;
  /** Whether this is a try of a sitting: the answer ends it. */
  readonly isOnce: boolean;
}

/** What is wrong with the fit, to be ticked and named; or that nothing is. */
export function AnswerForm({ session, isOnce }: AnswerFormProps) {
  const { ticked } = session;
  const isNamed = useSelector(session.chart, stateOf) === "named";
  const possible = faultsOn(session.lock);
  const groups = FAULT_GROUPS.filter(({ faults }) => faults.some((fault) => possible.includes(fault)));
  const switchOne = (fault: FitFault) =>
    session.tick(possible.filter((one) => ticked.includes(one) !== (one === fault)));
  return (
    <section className="panel stack" aria-label="Your answer">
      <h2>What is wrong with this fit?</h2>
      {groups.map(({ title, faults }) => (
        <fieldset key={title} className="grid gap-1">
          <legend className="text-soft">{title}</legend>
          {faults.map((fault) => (
            <Check
              key={fault}
              className="check phone:min-h-[44px]"
              isOn={ticked.includes(fault)}
              isDisabled={isNamed}
              onSwitch={() => switchOne(fault)}
            >
              {FAULT_WORDS[fault].what}
            </Check>
          ))}
        </fieldset>
      ))}
      <div className="row">
        <Button disabled={isNamed || ticked.length === 0} onClick={() => session.name(ticked)}>
          {ticked.length === 0 ? "Name what is ticked" : `Name ${countText(ticked.length, "fault")}`}
        </Button>
        <Button disabled={isNamed || ticked.length > 0} onClick={() => session.name([])}>
          Nothing is wrong
        </Button>
      </div>
      <p className="text-soft text-small">
        {JOB_RULES.inspection} {isOnce && "Your answer ends this try."}
      </p>
    </section>
  );
}
