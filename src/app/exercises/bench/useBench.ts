import { useMemo } from "react";
import { useHandStore } from "../../hand/useHandStore";
import type { BenchAddress } from "./benchAddress";
import { BenchSession } from "./benchSession";

/** A bench for the life of a screen, redrawn with every change of it. */
export const useBench = (address: BenchAddress): BenchSession =>
  useHandStore(useMemo(() => new BenchSession(address.setup, address.chance), [address]));
