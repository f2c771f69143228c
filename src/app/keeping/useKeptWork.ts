import { useEffect, useState } from "react";
import type { Store } from "../parts/page/store";
import { watchWork } from "../parts/page/underWay";
import type { WorkKind } from "../parts/storage/keptWork";
import { keepText } from "../parts/storage/safeTexts";

/** Some work on the screen, and how it is stored. */
interface WorkHere<Session extends Store> {
  readonly session: Session;
  readonly key: string;
  readonly kind: WorkKind<unknown>;
  /** How it is now, as plain data; null where nothing is to be stored of it. */
  readonly keptNow: () => unknown;
  /** Whether a reload would end it. */
  readonly isUnderWay: (session: Session) => boolean;
  /** What was found wrong when it began, or null. */
  readonly problem: string | null;
}

const otherTab = (noun: string) =>
  `Another tab has gone on with a ${noun}, so the one in this tab is not saved any more. Reload this page to go on with the other.`;
const notStored = (noun: string) => `This browser does not store your ${noun}. It lasts as long as this page.`;

const beforeReload = ({ noun, page }: WorkKind<unknown>, isStored: boolean) =>
  isStored
    ? `The ${noun} under way is saved. Open ${page} again, and you go on where you left it.`
    : `The ${noun} under way may be lost, because this tab does not store it.`;

/**
 * Stores some work with every change of it, so that a reload or a killed browser goes on with it; one tab at a time.
 *
 * @returns what is to be said of its storage, or null
 */
export function useKeptWork<Session extends Store>(work: WorkHere<Session>): string | null {
  const { session, key, kind, problem } = work;
  const [told, setTold] = useState<{ readonly session: Session; readonly said: string | null }>({
    session,
    said: problem,
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the session stands for all that is told of it
  useEffect(() => {
    let [isOurs, isStored] = [true, true];
    const tell = (said: string | null) =>
      setTold((before) => (before.session === session && before.said === said ? before : { session, said }));
    const heard = (isNowStored: boolean) => {
      if (!isOurs || isNowStored === isStored) return;
      isStored = isNowStored;
      tell(isStored ? null : notStored(kind.noun));
    };
    const onOther = (event: StorageEvent) => {
      if (event.key !== key) return;
      isOurs = false;
      tell(otherTab(kind.noun));
    };
    addEventListener("storage", onOther);
    const ends = [
      session.subscribe(() => {
        if (!isOurs) return;
        const kept = work.keptNow();
        void keepText(key, kept === null ? null : JSON.stringify(kept)).then(heard);
      }),
      watchWork(() => (work.isUnderWay(session) ? beforeReload(kind, isOurs && isStored) : null)),
      () => removeEventListener("storage", onOther),
    ];
    return () => {
      for (const end of ends) end();
    };
  }, [session, key]);
  return told.session === session ? told.said : problem;
}
