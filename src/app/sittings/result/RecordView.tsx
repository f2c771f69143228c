import { harmlessName } from "../../../lock/harmlessText";
import { readSittingRecord } from "../../../records/sitting/readSittingRecord";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { Notice } from "../../parts/Notice";
import type { KeptRecord } from "../../verdicts/keptRecord";
import { RecordResult } from "../../verdicts/RecordResult";
import type { CurrentSitting } from "../session/currentSitting";
import { CheckThis } from "./CheckRecord";
import { PracticeMisses } from "./PracticeMisses";
import { useTryMotions } from "./useTryMotions";

/**
 * The record of an earlier sitting: as the logbook has it, else as this browser kept it beside the logbook.
 *
 * @throws {Error} with a sentence, where there is none to show
 */
async function keptRecord(id: string, kept: readonly KeptRecord[]): Promise<KeptRecord> {
  const { sittingOnRecord } = await import("../../keeping/keep");
  const found = await sittingOnRecord(id).catch(() => undefined);
  const beside = kept.find((one) => one.id === id);
  if (found === undefined && beside !== undefined) return { id, ...readSittingRecord(beside) };
  if (found === undefined) throw new Error("the logbook of this browser has no such sitting");
  if (found.state === "running") throw new Error("this sitting has not ended");
  return { id, ...readSittingRecord(found.body) };
}

interface ShownProps {
  readonly current: CurrentSitting;
  readonly kept: KeptRecord;
  /** Puts it away, where it is shown because it has just ended. */
  readonly onLeave?: (() => void) | undefined;
}

function Shown({ current, kept, onLeave }: ShownProps) {
  const motions = useTryMotions(kept.id, kept.record.tries.length, null);
  return (
    <>
      <p className="text-title font-semibold">{harmlessName(kept.record.sheet.title)}</p>
      <RecordResult kept={kept} motions={motions} given={current.shelf.answers}>
        <PracticeMisses current={current} kept={kept} />
        {onLeave === undefined ? <CheckThis kept={kept} motions={motions} /> : <Button onClick={onLeave}>Done</Button>}
      </RecordResult>
    </>
  );
}

interface RecordViewProps extends Pick<ShownProps, "current" | "onLeave"> {
  readonly id: string;
}

/** An earlier sitting again, from the logbook. */
export function RecordView({ current, id, onLeave }: RecordViewProps) {
  const { answer, problem } = useAsked(id, () => keptRecord(id, current.shelf.records));
  return (
    <div className="sitting-page page gap-6 max-w-[920px] pt-6">
      {onLeave === undefined && (
        <p className="print:hidden">
          <a href="#/sittings">All sheets to sit</a> · <a href="#/logbook?view=sittings">Sittings in the logbook</a>
        </p>
      )}
      {problem !== null && <Notice>There is no result to show: {problem}.</Notice>}
      {answer?.id === id && <Shown current={current} kept={answer} onLeave={onLeave} />}
    </div>
  );
}
