import { useEffect, useMemo, useState } from "react";
import type { Help } from "../../../dialing/advice";
import { drawDoor } from "../../../fitting/doorToFit";
import type { Profile } from "../../../lock/profile";
import type { Chance } from "../../../statistics/chance";
import { watchWork } from "../../parts/page/underWay";
import { FittingSession } from "./fittingSession";
import { FITTING_KEY, forgetFitting, keepFitting, recallFitting, setAsideFitting } from "./kept/keptFitting";
import { keptOf, resumedFitting } from "./resumedFitting";

const OTHER_TAB =
  "Another tab has gone on with this fitting, so this one is not saved any more. Reload this page to go on with the other.";
const NOT_STORED = "This browser does not store your fitting. It lasts as long as this page.";

/** The fitting of a lock that goes on here, or a new one. */
function firstFitting(profile: Profile, chance: Chance, help: Help | null) {
  const { kept, problem } = recallFitting(profile.id);
  const resumed = kept === null ? null : resumedFitting(kept, profile, chance, help, Date.now());
  if (resumed !== null) return { session: resumed, problem };
  const session = new FittingSession(profile, chance, drawDoor(profile, chance), help ?? "full");
  return { session, problem: kept === null ? problem : setAsideFitting(profile.id) };
}

/**
 * A fitting that is stored with every act, so that a reload goes on with it; one tab at a time.
 *
 * @param help - that the address asks for, or null
 * @returns the fitting, and what is to be said of its storage, or null
 */
export function useKeptFitting(profile: Profile, chance: Chance, help: Help | null) {
  const { session, problem } = useMemo(() => firstFitting(profile, chance, help), [profile, chance, help]);
  const [said, setSaid] = useState(problem);
  useEffect(() => {
    let isOurs = true;
    const stopHearing = session.subscribe(() => {
      if (!isOurs) return;
      const isStored = session.acts.length === 0 ? forgetFitting(profile.id) : keepFitting(keptOf(session, Date.now()));
      if (!isStored) setSaid(NOT_STORED);
    });
    const onOther = ({ key }: StorageEvent) => {
      if (key !== FITTING_KEY + profile.id) return;
      isOurs = false;
      setSaid(OTHER_TAB);
    };
    addEventListener("storage", onOther);
    const stopWatching = watchWork(() => {
      if (session.acts.length === 0 || session.chart.getSnapshot().value === "declared") return null;
      const isStored = isOurs && recallFitting(profile.id).kept !== null;
      return isStored
        ? "The fitting you are in is saved. Open Fitting again, and you go on where you left it."
        : "The fitting you are in may be lost, because this tab does not store it.";
    });
    return () => {
      stopHearing();
      removeEventListener("storage", onOther);
      stopWatching();
    };
  }, [session, profile]);
  return { session, said };
}
