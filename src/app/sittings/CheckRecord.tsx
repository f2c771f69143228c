import { RecordChecker, RecordOutcome, useRecordCheck } from "../shell/RecordChecker";
import { APP_VERSION } from "./appVersion";
import { browserSha256, checkKept, checkRecordFile } from "./recordFile";
import type { KeptRecord } from "./sittingShelf";

const SOUND =
  "The record is sound: it is unchanged since its hash was made, its tries and answers fit its sheet, and its marks follow from them.";

/** Checks the record that is shown. */
export function CheckThis({ kept }: { readonly kept: KeptRecord }) {
  const { outcome, run } = useRecordCheck();
  return (
    <>
      <button
        type="button"
        className="button sitting-noprint"
        onClick={() => run(() => checkKept(kept, browserSha256, APP_VERSION))}
      >
        Check this record
      </button>
      <RecordOutcome outcome={outcome} sound={SOUND} />
    </>
  );
}

/** A saved record of a sitting, checked against its hash and its sheet, and marked again. */
export function CheckRecord() {
  return <RecordChecker sound={SOUND} check={(text) => checkRecordFile(text, browserSha256, APP_VERSION)} />;
}
