import { useState } from "react";
import { writeHashed } from "../../../drill/hashedRecord";
import { type HandoverRecord, handoverRecord, handoverRecordHash } from "../../../handover/record/handoverRecord";
import { checkRun, faultLines, type HandoverResult, missingWords, verdictWords } from "../../../handover/run/checkRun";
import { parseRun, writeRun } from "../../../handover/run/recordedRun";
import { RunError } from "../../../handover/run/runError";
import { LockError } from "../../../lock/lockError";
import { mean } from "../../../statistics/sample";
import { saveFile } from "../../logbook/saveFile";
import { FileButton } from "../../shell/FileButton";
import { messageOf } from "../../shell/messageOf";
import { browserSha256 } from "../../sittings/recordFile";
import type { HandoverSession } from "./handoverSession";
import { profileToWrite } from "./keptRun";
import { RecordPrint } from "./RecordPrint";

const JSON_TYPE = "application/json";

function recordOf(session: HandoverSession, result: HandoverResult): HandoverRecord | null {
  const { form, setup, zeroing, recorded } = session;
  if (form === null || session.run.situation.record !== "written") return null;
  const { right, left } = zeroing.memory.accepted;
  const average = (side: typeof right) => mean(side.map(({ deviation }) => deviation));
  const isByHand = right.length > 0 && left.length > 0 && !setup.isHandsOff;
  return handoverRecord({
    form,
    result,
    profileId: setup.profile.id,
    seed: setup.seed,
    height_in: recorded.scene.height_in,
    zero: isByHand ? { right: average(right), left: average(left) } : null,
  });
}

/** What a loaded file came to, line by line. */
function checkText(text: string): readonly string[] {
  try {
    const result = checkRun(parseRun(JSON.parse(text)));
    return [
      verdictWords(result),
      ...missingWords(result.missing),
      ...result.faults.map((fault) => faultLines(fault).join(" ")),
    ];
  } catch (error) {
    if (error instanceof SyntaxError) return ["Not read: this is not the JSON of a recorded handover."];
    if (error instanceof RunError || error instanceof LockError) return [`Not read: ${error.message}`];
    throw error;
  }
}

/** Saves run and record, prints, and checks a run that was saved. */
export function RunFiles({ session, result }: { readonly session: HandoverSession; readonly result: HandoverResult }) {
  const [told, setTold] = useState<readonly string[]>([]);
  const record = recordOf(session, result);
  const saveRun = () => {
    const text = writeRun(session.recorded, profileToWrite(session.recorded));
    saveFile({ name: `handover-${session.setup.seed}.json`, type: JSON_TYPE, text });
  };
  const saveRecord = async (made: HandoverRecord) => {
    try {
      const sha256 = await handoverRecordHash(made, browserSha256);
      const text = writeHashed({ sha256, record: made });
      saveFile({ name: `handover-record-${made.date}.json`, type: JSON_TYPE, text });
    } catch (error) {
      setTold([messageOf(error)]);
    }
  };
  return (
    <div className="run-files">
      <div className="run-buttons">
        <button type="button" className="button" onClick={saveRun}>
          Save the run
        </button>
        {record !== null && (
          <button type="button" className="button" onClick={() => saveRecord(record)}>
            Save the record
          </button>
        )}
        <button type="button" className="button" onClick={() => window.print()}>
          Print
        </button>
        <FileButton accept=".json" onFile={async (file) => setTold(checkText(await file.text()))}>
          Check a saved run
        </FileButton>
      </div>
      {record !== null && (
        <p className="run-note">
          The file holds the record with its SHA-256. <a href="#/handover?view=record">Check a record</a>
        </p>
      )}
      {record !== null && <RecordPrint record={record} />}
      <div role="status" data-testid="run-checked">
        {told.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
    </div>
  );
}
