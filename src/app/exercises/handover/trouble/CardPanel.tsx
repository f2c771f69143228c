import type { LockCard } from "../../../../handover/trouble/trouble";
import type { Profile } from "../../../../lock/profile";

/** What a lock in order takes, by its card. */
function takes(profile: Profile): string {
  if (profile.kind === "dial-encoder") {
    return `a stop may be ${profile.stopTolerance} graduations off; the lock forgets after ${profile.pauseLimit_s ?? "no"} s of rest`;
  }
  const [gate] = profile.wheelPack.gateTolerance;
  return `a number may be ${gate ?? profile.stopTolerance} graduations off`;
}

const WAITED_OUT = " The bench skips wrong-try delays.";

/** The lock's card, and what holds for the whole exercise. */
export function CardPanel({ card }: { readonly card: LockCard }) {
  const { profile, lostMotion } = card;
  return (
    <section className="panel" aria-label="Card of the lock">
      <h2>
        Card of the lock <small>{profile.title}</small>
      </h2>
      <p>
        On a lock in order {takes(profile)}. Lost motion at the last service: {lostMotion.toFixed(1)} graduations. The
        dial moves with the hand at once.
        {profile.kind === "dial-encoder" && profile.wrongTry !== undefined && WAITED_OUT}
      </p>
      <p className="text-soft">
        The door is open, and stays open until the lock is fixed and proved. This lock has one defect: find out which,
        and how large it is.
      </p>
    </section>
  );
}
