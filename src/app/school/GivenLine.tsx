import { useEffect, useState, useSyncExternalStore } from "react";
import { SITTING_SLOT, type SittingHere } from "../keeping/sittingSlot";
import { clockText } from "../parts/moments";
import { Notice } from "../parts/Notice";
import { useStored } from "../parts/page/useStore";
import { shownName } from "../parts/shownName";
import { problemWords } from "./askServer";
import { askedState, type Begun, beginAssigned, watchSitting } from "./givenSitting";
import { toBegin } from "./page/toBegin";

/** Asked again so often until the server has it, ms. */
const AGAIN_MS = 5000;

const NEVER = () => () => undefined;

/** When the server received the record of a sitting; null until it has. */
function useReceived(sittingId: string | null): number | null {
  const [received, setReceived] = useState<{ readonly id: string; readonly at: number } | null>(null);
  const at = received?.id === sittingId ? received.at : null;
  useEffect(() => {
    if (sittingId === null || at !== null) return;
    const look = async () => {
      const answer = await askedState(sittingId);
      const receivedAt = answer.kind === "answered" ? answer.value.receivedAt : null;
      if (receivedAt !== null) setReceived({ id: sittingId, at: receivedAt });
    };
    void look();
    const timer = setInterval(() => void look(), AGAIN_MS);
    return () => clearInterval(timer);
  }, [sittingId, at]);
  return at;
}

/** Why it was not begun, a sentence; null where it was. */
function notBegun(begun: Begun): string | null {
  switch (begun.kind) {
    case "begun":
      return null;
    case "other-here":
      return `"${shownName(begun.title)}" is still under way on this bench. Finish it or break it off, then begin again from the start page.`;
    case "silent":
      return "The class server does not answer. A sitting begins with its sheet from the server: check the network, then begin again from the start page.";
    case "refused":
      return `Not begun: ${problemWords(begun.problem)}.`;
  }
}

/** Begins what was asked for on the start page, and sends tries as they end. @returns why it was not begun, or null */
function useBeginning(here: SittingHere | null): string | null {
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    if (here === null) return;
    watchSitting(here);
    const asked = toBegin.take();
    if (asked !== null)
      void beginAssigned(asked.assignmentId, asked.person, here).then((begun) => setProblem(notBegun(begun)));
  }, [here]);
  return problem;
}

/** Of a sitting that a class server gave: why it was not begun, or, once it is over, whether it was sent. */
export function GivenLine() {
  const here = useStored(SITTING_SLOT, (slot) => slot.here);
  useSyncExternalStore(here?.subscribe ?? NEVER, () => here?.version ?? 0);
  const problem = useBeginning(here);
  const session = here?.session ?? null;
  const isEnded = session !== null && session.assignmentId !== null && session.isOver;
  const endedId = isEnded ? session.id : null;
  const received = useReceived(endedId);
  if (problem !== null) return <Notice className="mx-5 mt-4">{problem}</Notice>;
  if (endedId === null) return null;
  return (
    <p className="px-5 py-2 text-small" role="status">
      {received === null
        ? "This sitting is waiting to be sent. It is saved on this bench; keep the page open until the network is back."
        : `This sitting was sent to your class at ${clockText(received)}.`}
    </p>
  );
}
