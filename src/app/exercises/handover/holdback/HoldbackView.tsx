import { useMemo } from "react";
import { countWord } from "../../../../lock/amountWords";
import { opposite, type Turn } from "../../../../lock/dial";
import type { Profile } from "../../../../lock/profile";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import { spinOffRule } from "../../../../lock/spinOffRule";
import { againAct } from "../../../hand/handActs";
import { LockChoice } from "../../../hand/LockChoice";
import { LockInHand } from "../../../hand/LockInHand";
import { useStore } from "../../../parts/page/useStore";
import { Cutaway } from "../../../pictures/cutaway/Cutaway";
import { Cautions } from "../Cautions";
import type { HandoverViewProps } from "../HandoverScreen";
import { DoorPicture } from "./DoorPicture";
import { HoldbackSession, TASKS, type Task } from "./holdbackSession";
import "../workbench.css";
import "./holdback.css";

const CAUTIONS = [
  "A door whose bolt is held back does not lock. Show the holder that, and how to release the holdback.",
  "While the bolt is held back, the wheels are still in line: anyone who releases the holdback has an open lock.",
  "After you release the holdback, throw the bolt, spin off, and try the door.",
];

const DONE_WORDS: Readonly<Record<Task, string>> = {
  set: "Set the holdback",
  held: "Try to spin off",
  pulled: "Shut the door and pull",
  released: "Release the holdback",
  spunOff: "Spin off",
};

const spinOffText = (profile: Profile) => {
  const turns = countWord(spinOffRule(profile).turns);
  return `Spin off: turn ${opposite(profile.draw.turn)}, ${turns} turn${turns === "one" ? "" : "s"} and the way to throw the bolt.`;
};

const SAY: Readonly<Record<Task, (profile: Profile) => string>> = {
  set: () => "The lock is open and the dial is at the positive stop. Set the holdback.",
  held: ({ draw }) => `Now try to spin it off: turn ${opposite(draw.turn)}, a whole turn.`,
  pulled: () => "Shut the door and pull it.",
  released: () => "Release the holdback.",
  spunOff: spinOffText,
};

const TURNS: readonly Task[] = ["held", "spunOff"];

function Tasks({ session }: { readonly session: HoldbackSession }) {
  return (
    <ol className="stages" aria-label="What to show">
      {TASKS.map((task) => (
        <li key={task} aria-current={session.next === task ? "step" : undefined}>
          <span aria-hidden="true">{session.done.has(task) ? "●" : "○"}</span> {DONE_WORDS[task]}
          <span className="visually-hidden">{session.done.has(task) ? ", done" : ", to do"}</span>
        </li>
      ))}
    </ol>
  );
}

/** The dial, the holdback and the door. */
function HoldbackHand({ session }: { readonly session: HoldbackSession }) {
  const { lock, profile, next } = session;
  const way: Turn | null = next !== null && TURNS.includes(next) ? opposite(profile.draw.turn) : null;
  return (
    <>
      <Tasks session={session} />
      <div className="advice" role="status">
        <p className="advice-say">
          {next === null ? "Done. Held back, the door does not lock. Spun off, it locks." : SAY[next](profile)}
        </p>
        <p className="advice-detail" data-testid="holdback-told">
          {session.told}
        </p>
      </div>
      <LockInHand
        profile={profile}
        dial={lock.dial}
        held={session}
        bolt={lock.retraction === 1 ? "back" : null}
        isCoupled={lock.attempt.isCoupled}
        said={lock.isHeld ? ["held"] : []}
        digits="always"
        note={lock.isHeld ? "held back" : null}
        pointTo={way}
        acts={[againAct(() => session.again())]}
        keysMore={["The buttons for holdback and door follow the dial."]}
      />
      <div className="holdback-acts">
        <button type="button" className="button" onClick={() => session.slide()}>
          {lock.isHeld ? DONE_WORDS.released : DONE_WORDS.set}
        </button>
        <button type="button" className="button" onClick={() => session.pull()}>
          Shut the door and pull
        </button>
      </div>
    </>
  );
}

/** Holdback: the slide that keeps a bolt back, what it does to the dial, and what it does to the door. */
export function HoldbackView({ query, chance }: HandoverViewProps) {
  const [first] = SHIPPED_PROFILES;
  if (first === undefined) throw new Error("no lock is shipped");
  const profile = SHIPPED_PROFILES.find(({ id }) => id === query.get("profile")) ?? first;
  const session = useStore(useMemo(() => new HoldbackSession(profile, chance), [profile, chance]));
  const { lock } = session;
  return (
    <div className="workplace handover-workplace">
      <div className="workplace-hand">
        <div className="setup">
          <LockChoice locks={SHIPPED_PROFILES} lock={session.profile} onLock={(one) => session.takeLock(one)} />
        </div>
        <HoldbackHand session={session} />
      </div>
      <div className="workplace-panels">
        <section className="panel" aria-label="The door">
          <h2>
            The door <small>seen from above</small>
          </h2>
          <DoorPicture retraction={lock.retraction} isHeld={lock.isHeld} />
        </section>
        <div className="panel">
          <Cutaway attempt={lock.attempt} version={session.version} />
        </div>
        <Cautions cautions={CAUTIONS} source="common practice, no source" />
      </div>
    </div>
  );
}
