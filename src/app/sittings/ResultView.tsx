import type { CurrentSitting } from "./currentSitting";
import { RecordResult } from "./RecordResult";
import type { SittingSession } from "./sittingSession";
import type { KeptRecord } from "./sittingShelf";
import { useTryMotions } from "./useTryMotions";

interface ResultProps {
  readonly current: CurrentSitting;
  readonly session: SittingSession;
}

function Result({ current, kept }: { readonly current: CurrentSitting; readonly kept: KeptRecord }) {
  const { shelf } = current;
  const motions = useTryMotions(kept.id, kept.record.tries.length, shelf);
  return (
    <>
      {!shelf.isKeeping && (
        <p className="sitting-problem" role="alert">
          This browser keeps nothing here: save the record before you leave the page.
        </p>
      )}
      <RecordResult kept={kept} motions={motions} given={shelf.answers}>
        <button type="button" className="button" onClick={() => current.putAway()}>
          Done
        </button>
      </RecordResult>
    </>
  );
}

/** What a sitting came to, on screen and on paper. */
export function ResultView({ current, session }: ResultProps) {
  const { kept, problem } = current;
  return (
    <div className="sitting-page sitting-result">
      <p className="sitting-title">{session.sheet.title}</p>
      {problem !== null && (
        <p className="sitting-problem" role="alert">
          There is no record: {problem}.
        </p>
      )}
      {kept !== null && <Result current={current} kept={kept} />}
    </div>
  );
}
