import type { VisitRecord } from "../../../service/visitAct";
import { CONDITION_LABELS } from "../../../service/visitNames";
import { CONDITIONS, type Condition } from "../../../service/wrongThing";
import { Button } from "../../parts/controls/Button";
import { Check } from "../../parts/controls/Check";
import { SaidHere, type VisitProps } from "./VisitActs";

type Part = Exclude<keyof VisitRecord, "found">;

const PARTS: readonly (readonly [Part, string])[] = [
  ["hasFigures", "The figures I measured"],
  ["hasChanges", "What I changed"],
  ["hasProofs", "How often the lock opened after the work"],
  ["hasCombination", "The combination"],
];

interface RecordFormProps extends VisitProps {
  /** Whether this is a try of a sitting, which shows no debrief. */
  readonly isOnce: boolean;
}

/** What is written down, and the end of the visit. */
export function VisitRecordForm({ session, isOnce }: RecordFormProps) {
  const { draft: record } = session;
  const find = (condition: Condition, isOn: boolean) => {
    const others = record.found.filter((one) => one !== condition);
    session.write({ ...record, found: isOn ? [...others, condition] : others });
  };
  const able = CONDITIONS.filter((one) => session.visit.lock.cells.length > 0 || !one.startsWith("batteries"));
  return (
    <section className="panel stack" aria-label="Service record">
      <h2>Service record</h2>
      <fieldset className="stack gap-1">
        <legend className="text-small">What I found wrong; mark nothing where nothing was wrong</legend>
        {able.map((condition) => (
          <Check
            key={condition}
            className="check phone:min-h-[44px]"
            isOn={record.found.includes(condition)}
            onSwitch={(isOn) => find(condition, isOn)}
          >
            {CONDITION_LABELS[condition]}
          </Check>
        ))}
      </fieldset>
      <fieldset className="stack gap-1">
        <legend className="text-small">What I write down</legend>
        {PARTS.map(([part, label]) => (
          <Check
            key={part}
            className="check phone:min-h-[44px]"
            isOn={record[part]}
            onSwitch={(isOn) => session.write({ ...record, [part]: isOn })}
          >
            {label}
          </Check>
        ))}
      </fieldset>
      <div className="row">
        <Button onClick={() => session.act({ type: "record.written", record })}>Write the record</Button>
        <Button onClick={() => session.leave()}>
          {isOnce ? "Leave the site" : "Leave the site: show the debrief"}
        </Button>
      </div>
      <SaidHere session={session} isHere={({ type }) => type === "record.written"} />
    </section>
  );
}
