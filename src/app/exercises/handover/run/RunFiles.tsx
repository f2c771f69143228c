import { useState } from "react";
import { checkRun, faultLines, fitLines, missingWords, ownDoor, verdictWords } from "../../../../handover/run/checkRun";
import { parseRun, writeRun } from "../../../../handover/run/recordedRun";
import { RunError } from "../../../../handover/run/rules/runError";
import { RUN_WORDS } from "../../../../handover/run/rules/runWords";
import { LockError } from "../../../../lock/lockError";
import type { HandoverRecord } from "../../../../records/handover/handoverRecord";
import { recordHash, writeHashed } from "../../../../records/hashedRecord";
import { wordsOf } from "../../../../wording/problem";
import { Button } from "../../../parts/controls/Button";
import { FileButton } from "../../../parts/files/FileButton";
import { fileNameOf } from "../../../parts/files/fileName";
import { saveFile } from "../../../parts/files/saveFile";
import { messageOf } from "../../../parts/page/messageOf";
import type { HandoverSession } from "./session/handoverSession";
import { profileToWrite } from "./session/keptRun";

const JSON_TYPE = "application/json";

/** What a loaded file came to, line by line. */
function checkText(text: string): readonly string[] {
  try {
    const recorded = parseRun(JSON.parse(text));
    const result = checkRun(recorded);
    const own = ownDoor(recorded);
    return [
      verdictWords(result),
      ...missingWords(result.missing),
      ...fitLines(result),
      ...result.faults.map((fault) => faultLines(fault).join(" ")),
      ...(own === undefined ? [] : [wordsOf(own, RUN_WORDS)]),
    ];
  } catch (error) {
    if (error instanceof SyntaxError) return ["Not read: this is not the JSON of a recorded handover."];
    if (error instanceof RunError || error instanceof LockError) return [`Not read: ${error.message}`];
    throw error;
  }
}

interface RunFilesProps {
  readonly session: HandoverSession;
  /** Null while none is written. */
  readonly record: HandoverRecord | null;
}

/** Saves handover and record, prints, and checks a handover that was saved. */
export function RunFiles({ session, record }: RunFilesProps) {
  const [told, setTold] = useState<readonly string[]>([]);
  const save = (what: string, text: string) => {
    const person = session.form?.technician;
    saveFile({ name: fileNameOf({ what, person, at: Date.now(), ending: "json" }), type: JSON_TYPE, text });
  };
  const saveRun = () =>
    save(`handover door ${session.setup.seed}`, writeRun(session.recorded, profileToWrite(session.recorded)));
  const saveRecord = (made: HandoverRecord) => {
    try {
      save(`handover record ${made.door}`, writeHashed({ sha256: recordHash(made), record: made }));
    } catch (error) {
      setTold([messageOf(error)]);
    }
  };
  return (
    <div className="print:hidden">
      <div className="row my-3">
        <Button onClick={saveRun}>Save the handover</Button>
        {record !== null && <Button onClick={() => saveRecord(record)}>Save the record</Button>}
        <Button onClick={() => window.print()}>Print</Button>
        <FileButton accept=".json" onFile={async (file) => setTold(checkText(await file.text()))}>
          Check a saved handover
        </FileButton>
      </div>
      {record !== null && (
        <p className="text-small text-soft">
          The file holds the record with its SHA-256. <a href="#/handover?view=record">Check a record</a>
        </p>
      )}
      <div role="status" data-testid="run-checked">
        {told.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
    </div>
  );
}
