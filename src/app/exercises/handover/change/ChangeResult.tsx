import { useSelector } from "@xstate/react";
import { tellFaults } from "../../../../dialing/faultWords";
import { ordinalWord } from "../../../../dialing/words";
import { PROOFS_WANTED } from "../../../../drill/marking/jobRule";
import type { Change } from "../../../../handover/change/change";
import { changeStateInWords } from "../../../../handover/change/changeAdvice";
import { combinationText, type WordedChangeFault } from "../../../../handover/change/changeFault";
import { PackChange } from "../../../../handover/change/packChange";
import { tellChange } from "../../../../handover/change/tellChange";
import { countOrNone, countWord } from "../../../../wording/amountWords";
import { memoryOf, stateOf } from "../../../parts/page/ofChart";
import { TextTable } from "../../../parts/TextTable";
import type { ChangeSession } from "./changeSession";
import { headline, isRevealed } from "./changeWords";

function Fault({ fault }: { readonly fault: WordedChangeFault }) {
  return (
    <li>
      {fault.happened} {fault.did} <span className="text-soft">{fault.mend}</span>
    </li>
  );
}

/** What was meant and what the lock is set to, number by number. */
function NumbersTable({ change }: { readonly change: Change }) {
  const { profile, wanted, setCombination } = change;
  if (setCombination === null) return null;
  return (
    <TextTable
      head={["number", "meant", "set to"]}
      rows={wanted.map((number, k) => [
        ordinalWord(k + 1),
        combinationText([number], profile),
        combinationText([setCombination[k] ?? 0], profile),
      ])}
    />
  );
}

/** How the hand dialed the new numbers, where that explains a bad setting. */
const dialedFaults = (change: Change) =>
  change instanceof PackChange && change.record.newHand !== null
    ? tellFaults(change.record.newHand).filter(({ code }) => code !== "not-drawn")
    : [];

/** How the change stands: a sentence, what went wrong, then the numbers. */
export function ChangeResult({ session }: { readonly session: ChangeSession }) {
  const { change, help } = session;
  const state = useSelector(change.chart, stateOf);
  const { proofs } = useSelector(change.chart, memoryOf);
  const revealed = isRevealed(change);
  const faults = tellChange(change).filter(
    ({ code }) => revealed || (code !== "number-set-off" && code !== "wrong-index"),
  );
  const isBad = faults.some(({ code }) => code === "number-set-off" || code === "wrong-index");
  const dialed = revealed && isBad ? dialedFaults(change) : [];
  const said = headline(change, faults);
  return (
    <section className="result" aria-label="Result of the change">
      <h2>
        Result of the change <small>{help === "full" && changeStateInWords(state)}</small>
      </h2>
      <p className="result-headline text-title" role="status" data-testid="change-headline">
        {said}
      </p>
      <ul className="plain mb-3">
        {faults.map((fault) => (
          <Fault key={`${fault.code}-${fault.number}`} fault={fault} />
        ))}
        {dialed.map(({ code, number, happened }) => (
          <li key={`${code}-${number}`}>At the changing index: {happened}.</li>
        ))}
      </ul>
      {change.proof !== null && (
        <p className="first-letter:uppercase">
          {countOrNone(proofs)} of {countWord(PROOFS_WANTED)} proofs with the door open.
        </p>
      )}
      {revealed && change.proof !== null && <NumbersTable change={change} />}
      {change.proof === null && said === "" && faults.length === 0 && (
        <p className="text-soft">
          Current: {combinationText(change.present, change.profile)}. New:{" "}
          {combinationText(change.wanted, change.profile)}.
        </p>
      )}
    </section>
  );
}
