import { useEffect, useMemo, useState } from "react";
import { deviceList } from "../../../school/wire/classWire";
import { signedIn } from "../../../school/wire/peopleWire";
import { useAsked } from "../../keeping/useLogbook";
import { classServer } from "../../parts/page/classServer";
import { useStore } from "../../parts/page/useStore";
import type { Asking } from "../asking/asking";
import { boardRows, isUnknown } from "./boardRows";
import { BoardStream } from "./boardStream";

const streamOf = (asking: Asking, classId: string) =>
  new BoardStream({
    open: () => new EventSource(`${classServer() ?? ""}/classes/${encodeURIComponent(classId)}/live`),
    now: Date.now,
    chance: Math.random,
    later: (act, wait_ms) => {
      const timer = setTimeout(act, wait_ms);
      return () => clearTimeout(timer);
    },
    // The answer is of no use, but whoever is signed out is asked to sign in.
    onRefused: () => void asking.read("/me", signedIn).catch(() => undefined),
  });

/** The board of a class, redrawn with every change, and the names that go with it. */
export function useBoard(asking: Asking, classId: string) {
  const stream = useStore(useMemo(() => streamOf(asking, classId), [asking, classId]));
  useEffect(() => stream.begin(), [stream]);
  const [look, setLook] = useState(0);
  const { answer, problem } = useAsked(`devices ${classId} ${look}`, () =>
    asking.read(`/classes/${classId}/devices`, deviceList),
  );
  const devices = answer?.devices ?? [];
  const isOld = answer !== null && isUnknown(stream.board, devices);
  useEffect(() => {
    if (!isOld) return;
    const timer = setTimeout(() => setLook((before) => before + 1), 1000);
    return () => clearTimeout(timer);
  }, [isOld]);
  const now = stream.serverNow;
  return { stream, rows: answer === null ? [] : boardRows(stream.board, devices, now), now, problem };
}
