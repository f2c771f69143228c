import { Button } from "../../parts/controls/Button";
import { Notice } from "../../parts/Notice";
import type { KeptRecord } from "../../verdicts/keptRecord";
import { RecordResult } from "../../verdicts/RecordResult";
import type { CurrentSitting } from "../session/currentSitting";
import type { SittingSession } from "../session/sittingSession";
import { PracticeMisses } from "./PracticeMisses";
import { useTryMotions } from "./useTryMotions";

interface ResultProps {
  readonly current: CurrentSitting;
  readonly session: SittingSession;
  readonly onLeave: () => void;
}

function Result({ current, kept, onLeave }: Omit<ResultProps, "session"> & { readonly kept: KeptRecord }) {
  const { shelf } = current;
  const motions = useTryMotions(kept.id, kept.record.tries.length, shelf);
  return (
    <>
      {!shelf.isKeeping && (
        <Notice>This browser saves nothing here: save the record as a file before you leave the page.</Notice>
      )}
      <RecordResult kept={kept} motions={motions} given={shelf.answers}>
        <PracticeMisses current={current} kept={kept} />
        <Button onClick={onLeave}>Done</Button>
      </RecordResult>
    </>
  );
}

/** What a sitting came to, on screen and on paper. */
export function ResultView({ current, session, onLeave }: ResultProps) {
  const { kept, problem } = current;
  return (
    <div className="sitting-page page gap-6 max-w-[920px] pt-6">
      <p className="text-title font-semibold">{session.sheet.title}</p>
      {problem !== null && <Notice>There is no record: {problem}.</Notice>}
      {kept !== null && <Result {...{ current, kept, onLeave }} />}
    </div>
  );
}
