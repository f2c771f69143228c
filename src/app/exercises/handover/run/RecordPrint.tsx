import type { HandoverRecord } from "../../../../records/handover/handoverRecord";
import { doubtForClient } from "../../../results/doubtWords";
import { turnedWithText } from "../../../results/sourceWords";

const inWords = (code: string) => code.replaceAll("-", " ");

function zeroWords({ zero }: HandoverRecord): string {
  if (zero === null) return "no stops by hand: set by the ring, or by a simulated hand";
  return `mean ${zero.right.toFixed(2)} graduations off zero turning right, ${zero.left.toFixed(2)} turning left`;
}

/** How the lock is fitted; nothing where it came on its door. */
function fitRow({ fit }: HandoverRecord): readonly (readonly [string, string])[] {
  if (fit === undefined) return [];
  const { faults, skipped } = fit;
  const unchecked = skipped.length === 0 ? "" : `; not checked: ${skipped.map(inWords).join("; ")}`;
  return [["Fit", `${faults.map(inWords).join("; ") || "nothing wrong"}${unchecked}`]];
}

/** What turned the dial, where that was more than the screen, and what makes its turns doubtful. */
function turnedRows(record: HandoverRecord): readonly (readonly [string, string])[] {
  const doubt = doubtForClient(record);
  return [
    ...(record.sources === undefined ? [] : [["Turned with", turnedWithText(record)] as const]),
    ...(doubt === null ? [] : [["Turns in doubt", doubt] as const]),
  ];
}

function proofWords({ proofs }: HandoverRecord, isShown: boolean): string {
  const codes = proofs.filter((proof) => proof.isShown === isShown).map(({ code }) => inWords(code));
  return codes.join("; ") || "none";
}

/** The record as it is printed: all that its file holds but seed and profile. */
export function RecordPrint({ record }: { readonly record: HandoverRecord }) {
  const { faults, undoneFaults } = record;
  const rows = [
    ["Door", record.door],
    ["Lock", record.lock],
    ["Date", record.date],
    ["Technician", record.technician],
    ["Second person", record.second],
    ["Taken over by", record.takenOverBy],
    ["Holders informed", record.holders],
    ["Remarks", record.remarks || "none"],
    ["Height of the dial", `${record.height_in} inches`],
    ["Exception confirmed by", record.authorizedBy || "nobody"],
    ...fitRow(record),
    ["Zero", zeroWords(record)],
    ["Shown", proofWords(record, true)],
    ["Missing", proofWords(record, false)],
    ["Faults", faults === 0 ? "none" : `${faults}, of which ${undoneFaults} undone in the debrief`],
    ["Dialing", record.isHandsOff ? "by a simulated hand" : "by hand"],
    ...turnedRows(record),
    ["Next change due", `${record.nextChangeDue} at the latest`],
    ["Changed when", `${record.changeWhen.join(" ")} (${record.changeSource})`],
  ] as const;
  return (
    <section className="record-page max-w-[640px] print:-order-1 print:max-w-none" aria-label="The record">
      <h3>Handover record</h3>
      <dl className="pairs">
        {rows.map(([label, value]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <div className="record-lines hidden print:grid" aria-hidden="true">
        {SIGNERS.map((who) => (
          <p key={who}>
            <span />
            {who}, signature and date
          </p>
        ))}
      </div>
      <p className="text-small text-soft">{record.notice}</p>
    </section>
  );
}

/** Who signs the printed record, on lines of their own. */
const SIGNERS = ["Technician", "Second person", "Taken over by"] as const;
