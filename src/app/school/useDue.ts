import { useCallback, useEffect, useRef, useState } from "react";
import { dueAnswer } from "../../school/wire/assignmentsWire";
import type { Logbook } from "../../store/logbook";
import { type KeptDue, keepDue, keptDue } from "../../store/outbox/dueHere";
import { type Answer, askServer } from "./askServer";
import type { Trouble } from "./page/sendingState";

/** What is known of what is due. */
interface KnownDue {
  /** Null where the server never told it here. */
  readonly kept: KeptDue | null;
  /** Why nothing newer is known; null where the server has just told it. */
  readonly why: Extract<Trouble["kind"], "no-network" | "server"> | null;
}

/** Asked again so often, ms: a sitting that an instructor opens is seen within it. */
const AGAIN_MS = 30_000;
/** An answer that takes longer is not waited for before what is known is shown, ms. */
const SLOW_MS = 3000;

const TOO_MANY = 429;
/** The server knows this person at this bench no more: what was due is not theirs to see here. */
const isGone = (answer: Answer<unknown>): boolean =>
  answer.kind === "refused" && answer.status < 500 && answer.status !== TOO_MANY;

const lastTold = async (personId: string, logbook: Logbook, why: KnownDue["why"]): Promise<KnownDue> => ({
  kept: await keptDue(logbook, personId).catch(() => null),
  why,
});

/** What the server says, which is kept, or what it said last. @returns null where the person is not here any more */
async function askDue(personId: string, logbook: Logbook): Promise<KnownDue | null> {
  const keep = (kept: KeptDue | null) => void keepDue(logbook, personId, kept).catch(() => undefined);
  const answer = await askServer(`/bench/people/${encodeURIComponent(personId)}/due`, dueAnswer);
  if (answer.kind === "answered") {
    const kept = { list: answer.value, at: Date.now() };
    keep(kept);
    return { kept, why: null };
  }
  if (!isGone(answer)) return lastTold(personId, logbook, answer.kind === "silent" ? "no-network" : "server");
  keep(null);
  return null;
}

/** What is due for a person; null until the server has answered, or what it said last is found. */
export function useDue(personId: string, logbook: Logbook) {
  const [known, setKnown] = useState<KnownDue | null>(null);
  const asked = useRef(0);
  const look = useCallback(async () => {
    const turn = ++asked.current;
    const show = (now: KnownDue | null) => {
      if (turn === asked.current) setKnown((before) => now && { ...now, kept: now.kept ?? before?.kept ?? null });
    };
    const slow = setTimeout(() => void lastTold(personId, logbook, "no-network").then(show), SLOW_MS);
    const told = await askDue(personId, logbook);
    clearTimeout(slow);
    show(told);
  }, [personId, logbook]);
  useEffect(() => {
    const lookNow = () => void look();
    lookNow();
    const timer = setInterval(lookNow, AGAIN_MS);
    addEventListener("online", lookNow);
    return () => {
      clearInterval(timer);
      removeEventListener("online", lookNow);
    };
  }, [look]);
  return { known, look };
}
