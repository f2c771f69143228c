import { useCallback, useMemo } from "react";
import { useRest } from "../../hand/timePasses";
import { useStore } from "../../parts/page/useStore";
import type { BenchAddress } from "./benchAddress";
import { BenchSession } from "./benchSession";

/** A bench for the life of a screen, redrawn with every change of it. */
export function useBench(address: BenchAddress): BenchSession {
  const session = useStore(useMemo(() => new BenchSession(address.setup, address.chance), [address]));
  useRest(useCallback((at) => session.rest(at), [session]));
  return session;
}
