import { useEffect, useState, useSyncExternalStore } from "react";
import { type SchoolBench, schoolBench } from "./schoolBench";

const NEVER = () => () => undefined;

/** This bench as a bench of a class, redrawn with every change; null until the logbook is open. */
export function useSchoolBench(): SchoolBench | null {
  const [bench, setBench] = useState<SchoolBench | null>(null);
  useEffect(() => {
    let isWanted = true;
    schoolBench().then((one) => isWanted && setBench(one));
    return () => {
      isWanted = false;
    };
  }, []);
  useSyncExternalStore(bench?.subscribe ?? NEVER, () => bench?.version ?? 0);
  return bench;
}
