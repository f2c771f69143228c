import type { HandoverRecord } from "../../../handover/record/handoverRecord";

const inWords = (code: string) => code.replaceAll("-", " ");

function zeroWords({ zero }: HandoverRecord): string {
  if (zero === null) return "no readings by hand: ring aligned, or set by a simulated hand";
  return `mean deviation ${zero.right.toFixed(2)} turning right, ${zero.left.toFixed(2)} turning left, graduations`;
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
    ["Holders told", record.holders],
    ["Remarks", record.remarks || "none"],
    ["Height of the dial", `${record.height_in} inches`],
    ["Height authorized by", record.authorizedBy || "nobody"],
    ["Zero", zeroWords(record)],
    ["Shown", proofWords(record, true)],
    ["Missing", proofWords(record, false)],
    ["Faults on the way", faults === 0 ? "none" : `${faults}, of which ${undoneFaults} undone in the debrief`],
    ["Dialing", record.isHandsOff ? "by a simulated hand" : "by hand"],
    ["Next change due", `${record.nextChangeDue} at the latest`],
    ["Changed when", `${record.changeWhen.join(" ")} (${record.changeSource})`],
  ] as const;
  return (
    <dl className="record-print" aria-label="The record">
      {rows.map(([label, value]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
      <p className="run-note">{record.notice}</p>
    </dl>
  );
}
