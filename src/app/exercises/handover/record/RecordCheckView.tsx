import { harmlessName } from "../../../../lock/harmlessText";
import { checkHandoverRecord } from "../../../../records/handover/checkHandoverRecord";
import { handoverSentences } from "../../../../records/handover/handoverCheckWords";
import { parsedJson } from "../../../../records/hashedRecord";
import { RecordChecker, type RecordFinding } from "../../../parts/files/RecordChecker";
import { doubtForClient } from "../../../results/doubtWords";

const SOUND =
  "The record is sound. It is unchanged since its hash was made, and what it says of proofs, faults and the next change fits together.";

const named = (name: string) => (name === "" ? "–" : harmlessName(name));

/** Checks a handover record, and says whose and of when it is. @throws {Error} with a sentence */
function findingOf(text: string): RecordFinding {
  const { record, problems, unheld } = checkHandoverRecord(parsedJson(text));
  const doubt = doubtForClient(record);
  const shown = record.proofs.filter(({ isShown }) => isShown).length;
  return {
    problems: handoverSentences(problems),
    remarks: handoverSentences(unheld),
    says: [
      ["lock", named(record.lock)],
      ["door", named(record.door)],
      ["date", record.date],
      ["technician", named(record.technician)],
      ["taken over by", named(record.takenOverBy)],
      ["proofs", `${shown} of ${record.proofs.length} shown`],
      ["faults", `${record.faults}, ${record.undoneFaults} of them undone`],
      ...(doubt === null ? [] : [["turns in doubt", doubt] as const]),
    ],
  };
}

/** A saved handover record, checked against its hash and against itself. */
export function RecordCheckView() {
  return <RecordChecker sound={SOUND} check={findingOf} />;
}
