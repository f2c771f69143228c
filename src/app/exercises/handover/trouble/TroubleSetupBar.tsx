import { TROUBLE_GUIDE } from "../../../../handover/trouble/troubleGuide";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import { ActButton } from "../../../hand/ActButton";
import { HelpChoice } from "../../../hand/HelpChoice";
import { Check } from "../../../parts/controls/Check";
import { Select } from "../../../parts/controls/Select";
import { troubleActs } from "./troubleActs";
import type { TroubleSession } from "./troubleSession";
import { kindsOf } from "./troubleSetup";

const HELPS = [
  { help: "full", label: "Full", title: "What to look at next, the reading, arrivals counted" },
  { help: "silent", label: "Silent", title: "No hints and no reading" },
] as const;

/** Which conditions may come. The last one left cannot be taken out. */
function Pool({ session }: { readonly session: TroubleSession }) {
  const { pool, lock } = session.setup;
  const kinds = kindsOf(lock);
  const isWhole = pool.length === kinds.length;
  return (
    <details className="relative">
      <summary className="button">
        Defects that may come: {isWhole ? `all ${kinds.length}` : `${pool.length} of ${kinds.length}`}
      </summary>
      <fieldset className="plate absolute z-3 top-full left-0 grid gap-1 w-max mt-2 p-4 border-line raised">
        <legend className="float-left text-soft">Draw from</legend>
        {kinds.map((kind) => {
          const isIn = pool.includes(kind);
          return (
            <Check
              key={kind}
              className="check min-h-[26px]"
              isOn={isIn}
              isDisabled={isIn && pool.length === 1}
              onSwitch={() => session.change({ pool: kinds.filter((one) => pool.includes(one) !== (one === kind)) })}
            >
              {TROUBLE_GUIDE[kind].title}
            </Check>
          );
        })}
      </fieldset>
    </details>
  );
}

/** Which lock, which conditions, how much help. */
export function TroubleSetupBar({ session }: { readonly session: TroubleSession }) {
  const { setup } = session;
  return (
    <div className="setup justify-start">
      <Select
        aria-label="Lock"
        value={setup.lock}
        choices={[["any", "Any lock"], ...SHIPPED_PROFILES.map(({ id, title }) => [id, title] as const)]}
        onChoice={(lock) => session.change({ lock })}
      />
      <Pool session={session} />
      <HelpChoice help={setup.help} onHelp={(help) => session.change({ help })} offers={HELPS} />
      {troubleActs(session).map((act) => (
        <ActButton key={act.key} act={act} />
      ))}
      <small>lock number {setup.seed}</small>
    </div>
  );
}
