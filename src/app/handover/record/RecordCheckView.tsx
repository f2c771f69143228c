import { parsedJson } from "../../../drill/hashedRecord";
import { checkHandoverRecord } from "../../../handover/record/checkHandoverRecord";
import { RecordChecker } from "../../shell/RecordChecker";
import { browserSha256 } from "../../sittings/recordFile";

const SOUND =
  "The record is sound: it is unchanged since its hash was made, and what it says of proofs, faults and the next change fits together.";

/** A saved handover record, checked against its hash and against itself. */
export function RecordCheckView() {
  return <RecordChecker sound={SOUND} check={(text) => checkHandoverRecord(parsedJson(text), browserSha256)} />;
}
