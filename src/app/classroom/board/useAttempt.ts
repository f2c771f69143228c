import { useEffect, useRef, useState } from "react";
import { attemptAnswer, type GrowingAttempt, type LiveBench } from "../../../school/wire/liveWire";
import type { Asking } from "../asking/asking";

/** An attempt of a bench as it was when it was asked for. */
interface AskedAttempt {
  readonly attempt: GrowingAttempt;
  readonly hasEnded: boolean;
}

/**
 * The motion of the attempt at a bench, asked for as it grows: one answer after the other, and of what came meanwhile the latest.
 * It stays when the bench is gone; null before there is one, and where it was taken back.
 */
export function useAttempt(asking: Asking, classId: string, bench: LiveBench): AskedAttempt | null {
  const [shown, setShown] = useState<AskedAttempt | null>(null);
  const latest = useRef<LiveBench["attempt"]>(null);
  const isAsking = useRef(false);
  const { deviceId, attempt: told } = bench;
  const key = told === null ? null : `${told.id} ${told.letters} ${told.hasEnded}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for what the bench told
  useEffect(() => {
    latest.current = told;
    if (told === null || isAsking.current) return;
    const path = `/classes/${classId}/live/${encodeURIComponent(deviceId)}/attempt`;
    const askUntilLatest = async () => {
      isAsking.current = true;
      for (let asked: LiveBench["attempt"] = null; asked !== latest.current; ) {
        asked = latest.current;
        const attempt = (await asking.read(path, attemptAnswer).catch(() => null))?.attempt ?? null;
        if (attempt !== null) setShown({ attempt, hasEnded: asked?.id === attempt.id && asked.hasEnded });
      }
      isAsking.current = false;
    };
    void askUntilLatest();
  }, [key, asking, classId, deviceId]);
  return told === null && bench.isHere ? null : shown;
}
