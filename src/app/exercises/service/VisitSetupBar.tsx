import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { HelpChoice } from "../../hand/HelpChoice";
import { Button } from "../../parts/controls/Button";
import { Select } from "../../parts/controls/Select";
import type { VisitProps } from "./VisitActs";

const HELPS = [
  { help: "full", label: "Full", title: "What is left to inspect, and the limit you read beside each figure" },
  { help: "counts", label: "Counts", title: "How much is left to inspect, and how often the lock opened in a row" },
  { help: "silent", label: "Silent", title: "No hints until the debrief" },
] as const;

/** Which lock, how much help; a change of either begins the visit again. */
export function VisitSetupBar({ session }: VisitProps) {
  const { lock, help } = session.setup;
  return (
    <div className="setup justify-start">
      <Select
        aria-label="Lock"
        value={lock}
        choices={[["any", "Any lock"], ...SHIPPED_PROFILES.map(({ id, title }) => [id, title] as const)]}
        onChoice={(one) => session.change({ lock: one })}
      />
      <HelpChoice help={help} onHelp={(one) => session.change({ help: one })} offers={HELPS} />
      <Button onClick={() => session.again()}>Another visit</Button>
    </div>
  );
}
