import { useEffect, useState, useSyncExternalStore } from "react";
import type { AttemptFilter } from "../../../store/attemptQueries";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { AttemptWindow } from "./attemptWindow";

/** The attempts of a filter, asked for again whenever it or the logbook changes. */
export function useAttemptWindow({ logbook, version }: CurrentLogbook, filter: AttemptFilter): AttemptWindow {
  const [attempts] = useState(() => new AttemptWindow(logbook));
  useSyncExternalStore(attempts.subscribe, () => attempts.version);
  const name = JSON.stringify(filter);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the name stands for the filter, the version for the records
  useEffect(() => {
    attempts.ask(filter);
  }, [attempts, version, name]);
  return attempts;
}
