import type { Help } from "../../../dialing/advice";
import type { Profile } from "../../../lock/profile";
import type { Chance } from "../../../statistics/chance";
import { FittingSession } from "./fittingSession";
import type { KeptFitting } from "./kept/keptFitting";

/** A fitting as it is stored. @param now - milliseconds since 1970 */
export function keptOf(session: FittingSession, now: number): KeptFitting {
  const { profile, door, acts, checked, help, helpHad, wasDeclared, startedAt, chart } = session;
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
    worked_ms: startedAt === null ? 0 : Math.max(0, now - startedAt),
    keptAt: now,
  };
}

/**
 * A fitting that goes on as it was left: its acts are done again on the same door. Time away does not count.
 *
 * @param help - that is asked for now; null for what was had
 * @param now - milliseconds since 1970
 * @returns null where the acts do not go any more, such as on a lock whose sizes have changed
 */
export function resumedFitting(
  kept: KeptFitting,
  profile: Profile,
  chance: Chance,
  help: Help | null,
  now: number,
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
  session.startedAt = kept.acts.length === 0 ? null : now - kept.worked_ms;
  session.setHelp(help ?? kept.help);
  return session;
}
