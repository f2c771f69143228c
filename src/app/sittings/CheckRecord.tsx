import { useState } from "react";
import { messageOf } from "../shell/messageOf";
import { RecordChecker, type RecordFinding, RecordFindings } from "../shell/RecordChecker";
import { APP_VERSION } from "./appVersion";
import { browserSha256, checkKept, checkRecordFile } from "./recordFile";
import type { KeptRecord } from "./sittingShelf";

const SOUND =
  "The record is sound: it is unchanged since its hash was made, its tries and answers fit its sheet, and its marks follow from them.";

/** Checks the record that is shown. */
export function CheckThis({ kept }: { readonly kept: KeptRecord }) {
  const [check, setCheck] = useState<RecordFinding | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const run = () =>
    checkKept(kept, browserSha256, APP_VERSION).then(setCheck, (error: unknown) => setFailure(messageOf(error)));
  return (
    <>
      <button type="button" className="button sitting-noprint" onClick={run}>
        Check this record
      </button>
      {check !== null && <RecordFindings problems={check.problems} unheld={check.unheld ?? []} sound={SOUND} />}
      {failure !== null && (
        <p role="alert" className="record-problem">
          Not checked: {failure}.
        </p>
      )}
    </>
  );
}

/** A saved record of a sitting, checked against its hash and its sheet, and marked again. */
export function CheckRecord() {
  return <RecordChecker sound={SOUND} check={(text) => checkRecordFile(text, browserSha256, APP_VERSION)} />;
}
