import type { LockCard } from "../../../handover/trouble/trouble";
import type { Profile } from "../../../lock/profile";

/** What a lock in order takes, by its card. */
function takes(profile: Profile): string {
  if (profile.kind === "dial-encoder") {
    return `a stop may be ${profile.stopTolerance} off; it forgets after ${profile.pauseLimit_s ?? "no"} seconds of rest`;
  }
  const [gate] = profile.wheelPack.gateTolerance;
  return `a number may be ${gate ?? profile.stopTolerance} off`;
}

const WAITED_OUT = " What it waits after wrong tries, the bench waits out for you.";

/** The lock's card, and what holds for the whole exercise. */
export function CardPanel({ card }: { readonly card: LockCard }) {
  const { profile, lostMotion } = card;
  return (
    <section className="panel" aria-label="Card of the lock">
      <h2>
        Card of the lock <small>{profile.title}</small>
      </h2>
      <p>
        On a lock in order {takes(profile)}; lost motion when last served {lostMotion.toFixed(1)}; the dial moves with
        the hand at once.{profile.kind === "dial-encoder" && profile.wrongTry !== undefined && WAITED_OUT}
      </p>
      <p className="trouble-soft">
        The door stands open and stays open until the lock is fixed and proved. One thing is wrong with this lock: find
        out what, and how much.
      </p>
    </section>
  );
}
