import { useState } from "react";
import { checkRecord, type RecordCheck } from "../../drill/checkRecord";
import { RecordChecker, RecordFindings } from "../shell/RecordChecker";
import { browserSha256, checkRecordFile } from "./recordFile";
import type { KeptRecord } from "./sittingShelf";

const SOUND =
  "The record is sound: it is unchanged since its hash was made, its tries and answers fit its sheet, and its marks follow from them.";

/** Checks the record that is shown. */
export function CheckThis({ kept }: { readonly kept: KeptRecord }) {
  const [check, setCheck] = useState<RecordCheck | null>(null);
  const run = () => checkRecord(kept.record, kept.sha256, browserSha256).then(setCheck);
  return (
    <>
      <button type="button" className="button sitting-noprint" onClick={run}>
        Check this record
      </button>
      {check !== null && <RecordFindings problems={check.problems} sound={SOUND} />}
    </>
  );
}

/** A saved record of a sitting, checked against its hash and its sheet, and marked again. */
export function CheckRecord() {
  return <RecordChecker sound={SOUND} check={(text) => checkRecordFile(text, browserSha256)} />;
}
