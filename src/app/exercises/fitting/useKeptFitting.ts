import { useMemo } from "react";
import type { Help } from "../../../dialing/advice";
import { drawDoor } from "../../../fitting/doorToFit";
import type { Profile } from "../../../lock/profile";
import type { Chance } from "../../../statistics/chance";
import { useKeptWork } from "../../keeping/useKeptWork";
import { recallWork, setWorkAside } from "../../parts/storage/keptWork";
import { FittingSession } from "./fittingSession";
import { FITTING_WORK, fittingKey } from "./kept/keptFitting";
import { keptOf, resumedFitting } from "./resumedFitting";

/** The fitting of a lock that goes on here, or a new one. */
function firstFitting(profile: Profile, chance: Chance, help: Help | null) {
  const key = fittingKey(profile.id);
  const { kept, problem } = recallWork(key, FITTING_WORK);
  const isOfLock = kept?.profile === profile.id;
  const resumed = isOfLock ? resumedFitting(kept, profile, chance, help, performance.now()) : null;
  if (resumed !== null) return { session: resumed, problem };
  const session = new FittingSession(profile, chance, drawDoor(profile, chance), help ?? "full");
  return { session, problem: kept === null ? problem : setWorkAside(key, FITTING_WORK).problem };
}

const hasActs = ({ acts }: FittingSession) => acts.length > 0;

/**
 * A fitting that is stored with every act, so that a reload goes on with it; one tab at a time.
 *
 * @param help - that the address asks for, or null
 * @returns the fitting, and what is to be said of its storage, or null
 */
export function useKeptFitting(profile: Profile, chance: Chance, help: Help | null) {
  const { session, problem } = useMemo(() => firstFitting(profile, chance, help), [profile, chance, help]);
  const said = useKeptWork({
    ...{ session, problem, kind: FITTING_WORK },
    key: fittingKey(profile.id),
    keptNow: () => (hasActs(session) ? keptOf(session, Date.now(), performance.now()) : null),
    isUnderWay: (one) => hasActs(one) && one.chart.getSnapshot().value !== "declared",
  });
  return { session, said };
}
