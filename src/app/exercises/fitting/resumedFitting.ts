import type { Help } from "../../../dialing/advice";
import type { Profile } from "../../../lock/profile";
import type { Chance } from "../../../statistics/chance";
import { FittingSession } from "./fittingSession";
import type { KeptFitting } from "./kept/keptFitting";

/**
 * A fitting as it is stored.
 *
 * @param now - wall time, milliseconds since 1970
 * @param steady_ms - the same moment by a clock that only goes on
 */
export function keptOf(session: FittingSession, now: number, steady_ms = now): KeptFitting {
  const { profile, door, acts, checked, help, helpHad, wasDeclared, chart } = session;
  return {
    version: 1,
    profile: profile.id,
    door: { slotAt: door.slotAt, bend: { ...door.bend } },
    acts,
    checks: checked,
    help,
    helpHad,
    isDeclared: chart.getSnapshot().value === "declared",
    wasDeclared,
    worked_ms: session.workedBy(steady_ms),
    keptAt: now,
  };
}

/**
 * A fitting that goes on as it was left: its acts are done again on the same door. Time away does not count.
 *
 * @param help - that is asked for now; null for what was had
 * @param steady_ms - now, by a clock that only goes on
 * @returns null where the acts do not go any more, such as on a lock whose sizes have changed
 */
export function resumedFitting(
  kept: KeptFitting,
  profile: Profile,
  chance: Chance,
  help: Help | null,
  steady_ms: number,
): FittingSession | null {
  const session = new FittingSession(profile, chance, kept.door, kept.helpHad);
  for (let done = 0; done <= kept.acts.length; done++) {
    for (const { check, seed } of kept.checks.filter(({ after }) => after === done)) session.checkWith(check, seed);
    const act = kept.acts[done];
    if (act !== undefined) session.act(act);
  }
  if (session.acts.length < kept.acts.length || session.checked.length < kept.checks.length) return null;
  if (kept.isDeclared) session.declare();
  session.wasDeclared = kept.wasDeclared;
  session.begunAt = kept.acts.length === 0 ? null : steady_ms - kept.worked_ms;
  session.setHelp(help ?? kept.help);
  return session;
}
