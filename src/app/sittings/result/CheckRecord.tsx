import { lazy, Suspense, useState } from "react";
import type { Motion } from "../../../dialing/motion";
import { parsedJson } from "../../../records/hashedRecord";
import { LogbookError } from "../../../records/logbookError";
import { sittingShown } from "../../../records/sitting/sittingShown";
import { copiesHere } from "../../../store/copiesHere";
import { currentLogbook } from "../../keeping/currentLogbook";
import { Button } from "../../parts/controls/Button";
import { RecordChecker, type RecordFinding, RecordOutcome, useRecordCheck } from "../../parts/files/RecordChecker";
import { APP_VERSION } from "../../parts/page/appVersion";
import { checkKept } from "../../verdicts/checkKept";
import type { KeptRecord } from "../../verdicts/keptRecord";
import { findingOf } from "./shownRows";

const SOUND =
  "The record is sound. It is unchanged since its hash was made, its tries and answers fit its sheet, its recordings open the lock where it says so, and its marks follow from them.";

const NOT_SEARCHED =
  "This browser’s logbook cannot be read, so the same recordings under another attempt were not looked for.";

/** A finding with what this browser's logbook says of the recordings: the same ones under another attempt. */
async function withCopies(finding: RecordFinding, body: unknown): Promise<RecordFinding> {
  try {
    const { logbook } = await currentLogbook();
    const copies = await copiesHere(logbook, body);
    return { ...finding, problems: [...finding.problems, ...copies] };
  } catch (error) {
    if (!(error instanceof LogbookError)) throw error;
    return { ...finding, unchecked: [...(finding.unchecked ?? []), NOT_SEARCHED] };
  }
}

/** A record that a class server signed. What checks that is fetched only for one. */
const SignatureCheck = lazy(async () => ({ default: (await import("./SignatureCheck")).SignatureCheck }));

const isSigned = (body: unknown) => typeof body === "object" && body !== null && "receipt" in body;

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
      <Button className="print:hidden" onClick={() => run(() => withCopies(findingOf(checkKept(kept, motions)), kept))}>
        Check this record
      </Button>
      <RecordOutcome outcome={outcome} sound={SOUND} />
    </>
  );
}

/** A saved record of a sitting, checked against its hash, its sheet and its recordings, and marked again. */
export function CheckRecord() {
  const [signed, setSigned] = useState<unknown>(null);
  const checkText = (text: string) => {
    const body = parsedJson(text);
    setSigned(null);
    const shown = sittingShown(body, APP_VERSION);
    setSigned(isSigned(body) ? body : null);
    return withCopies(findingOf(shown), body);
  };
  return (
    <>
      <RecordChecker sound={SOUND} check={checkText} />
      {signed !== null && (
        <Suspense fallback={null}>
          <SignatureCheck file={signed} />
        </Suspense>
      )}
    </>
  );
}
