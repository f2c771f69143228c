import { useEffect, useRef, useState, useSyncExternalStore } from "react";
import { messageOf } from "../parts/page/messageOf";
import { type CurrentLogbook, currentLogbook } from "./currentLogbook";

const NEVER = () => () => undefined;

/** The logbook of this browser, redrawn with every change of it; null until it is open. */
export function useLogbook(): CurrentLogbook | null {
  const [opened, setOpened] = useState<CurrentLogbook | null>(null);
  useEffect(() => {
    let isWanted = true;
    currentLogbook().then((one) => isWanted && setOpened(one));
    return () => {
      isWanted = false;
    };
  }, []);
  useSyncExternalStore(opened?.subscribe ?? NEVER, () => opened?.version ?? 0);
  return opened;
}

/** What was asked for, and what went wrong; the earlier answer stays until there is a new one. */
export interface Asked<Answer> {
  readonly answer: Answer | null;
  readonly problem: string | null;
}

/**
 * Asks again whenever the key changes.
 *
 * @param key - names the question, with all that its answer hangs on
 */
export function useAsked<Answer>(key: string, ask: () => Promise<Answer>): Asked<Answer> {
  const [asked, setAsked] = useState<Asked<Answer>>({ answer: null, problem: null });
  const question = useRef(ask);
  question.current = ask;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the question
  useEffect(() => {
    let isWanted = true;
    const take = (next: Asked<Answer>) => isWanted && setAsked(next);
    question.current().then(
      (answer) => take({ answer, problem: null }),
      (error) => take({ answer: null, problem: messageOf(error) }),
    );
    return () => {
      isWanted = false;
    };
  }, [key]);
  return asked;
}
