import { Lines } from "../../../parts/Lines";
import { looked } from "../turn/handOnDial";
import { TurnedSection } from "../turn/TurnedSection";
import { limitLines } from "./findWords";
import type { InspectionSession } from "./inspectionSession";

/** What stands beside the checks: a good fit in section, and with full help its limits. The lock at hand is not shown. */
export function FindHelp({ session }: { readonly session: InspectionSession }) {
  const { help, lock, goodExample } = session;
  if (help === "silent") return null;
  return (
    <section className="panel stack" aria-label="A good fit, for comparison">
      <h2 tabIndex={-1}>
        A good fit <small>not the lock that you judge</small>
      </h2>
      <TurnedSection work={looked({ assembly: goodExample, lock })} />
      {help === "full" && <Lines className="grid gap-1 text-small" of={limitLines(lock)} />}
    </section>
  );
}
