import { useEffect, useState } from "react";
import { askToPersist } from "../../store/askToPersist";
import { Button } from "../parts/controls/Button";
import type { CurrentLogbook } from "./currentLogbook";
import { type KeepingState, keepingWords, waitingCount } from "./stateWords";

const keeper = () => (navigator.storage?.persist === undefined ? undefined : navigator.storage);

/** Where the records are and how safe; the way to ask for more safety, or to try again. */
export function KeepingLine({ current }: { readonly current: CurrentLogbook }) {
  const [promise, setPromise] = useState<KeepingState["promise"]>(null);
  const { logbook } = current;
  useEffect(() => {
    // Only looked at: a browser may put a question to the user when it is asked to keep them.
    keeper()
      ?.persisted()
      .then((isKept) => setPromise((before) => (isKept ? "kept" : before)))
      .catch(() => undefined);
  }, []);
  const problem = logbook.problem?.message ?? null;
  return (
    <div className="row gap-x-4 text-small text-soft">
      <p role="status">{keepingWords({ pending: waitingCount(logbook.pending), problem, promise })}</p>
      {problem !== null && (
        <Button className="slim" onClick={() => logbook.retry()}>
          Try again
        </Button>
      )}
      {problem === null && promise === null && (
        <Button className="slim" onClick={() => askToPersist(keeper()).then(setPromise)}>
          Ask the browser to keep the records
        </Button>
      )}
    </div>
  );
}
