import type { Motion } from "../../records/motion/traceCodec";
import { RecordChecker, RecordOutcome, useRecordCheck } from "../shell/RecordChecker";
import { APP_VERSION } from "./appVersion";
import { checkKept, checkRecordFile } from "./recordFile";
import { findingOf } from "./shownRows";
import type { KeptRecord } from "./sittingShelf";

const SOUND =
  "The record is sound. It is unchanged since its hash was made, its tries and answers fit its sheet, its recordings open the lock where it says so, and its marks follow from them.";

interface CheckThisProps {
  readonly kept: KeptRecord;
  /** Of each try, as far as they are saved here; null where none is. */
  readonly motions: readonly (Motion | null)[];
}

/** Checks the record that is shown. */
export function CheckThis({ kept, motions }: CheckThisProps) {
  const { outcome, run } = useRecordCheck();
  return (
    <>
      <button
        type="button"
        className="button sitting-noprint"
        onClick={() => run(() => findingOf(checkKept(kept, APP_VERSION, motions)))}
      >
        Check this record
      </button>
      <RecordOutcome outcome={outcome} sound={SOUND} />
    </>
  );
}

/** A saved record of a sitting, checked against its hash, its sheet and its recordings, and marked again. */
export function CheckRecord() {
  return <RecordChecker sound={SOUND} check={(text) => findingOf(checkRecordFile(text, APP_VERSION))} />;
}
