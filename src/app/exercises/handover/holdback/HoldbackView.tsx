import { useSelector } from "@xstate/react";
import { useMemo } from "react";
import { HOLDBACK_TASKS, nextTask } from "../../../../handover/holdback/holdbackMachine";
import { opposite } from "../../../../lock/dial";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import { weightOf } from "../../../hand/dial/dialAddress";
import { againAct } from "../../../hand/handActs";
import { LockChoice } from "../../../hand/LockChoice";
import { LockInHand } from "../../../hand/LockInHand";
import { useHandStore } from "../../../hand/useHandStore";
import { WeightChoice } from "../../../hand/WeightChoice";
import { Button } from "../../../parts/controls/Button";
import { memoryOf } from "../../../parts/page/ofChart";
import { Cutaway } from "../../../pictures/cutaway/Cutaway";
import { Cautions } from "../parts/Cautions";
import type { HandoverViewProps } from "../parts/handoverViewProps";
import { DoorPicture } from "./DoorPicture";
import { HoldbackSession } from "./holdbackSession";
import { CAUTIONS, sayNext, TASK_WORDS, TOLD } from "./holdbackWords";
import "./holdback.css";

interface HoldbackProps {
  readonly session: HoldbackSession;
}

function Tasks({ session }: HoldbackProps) {
  const memory = useSelector(session.chart, memoryOf);
  const { done } = memory;
  return (
    <ol className="stages" aria-label="What to show">
      {HOLDBACK_TASKS.map((task) => (
        <li key={task} aria-current={nextTask(memory) === task ? "step" : undefined}>
          <span className={`pip inline-block ${done.includes(task) ? "pip-made" : ""}`} aria-hidden="true" />{" "}
          {TASK_WORDS[task]}
          <span className="visually-hidden">{done.includes(task) ? ", done" : ", to do"}</span>
        </li>
      ))}
    </ol>
  );
}

/** The dial, the holdback and the door. */
function HoldbackHand({ session }: HoldbackProps) {
  const { lock, profile } = session;
  const memory = useSelector(session.chart, memoryOf);
  const next = nextTask(memory);
  return (
    <>
      <Tasks session={session} />
      <div className="advice" role="status">
        <p className="advice-say text-title leading-[1.3] phone:text-lead">{sayNext(next, profile)}</p>
        <p className="advice-detail text-soft" data-testid="holdback-told">
          {memory.told !== null && TOLD[memory.told]}
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
        pointTo={next === "held" || next === "spunOff" ? opposite(profile.draw.turn) : null}
        acts={[againAct(() => session.again())]}
        keysMore={["The buttons for holdback and door follow the dial."]}
      />
      <div className="row justify-center w-full">
        <Button className="phone:flex-1" onClick={() => session.slide()}>
          {lock.isHeld ? TASK_WORDS.released : TASK_WORDS.set}
        </Button>
        <Button className="phone:flex-1" onClick={() => session.pull()}>
          {TASK_WORDS.pulled}
        </Button>
      </div>
    </>
  );
}

/** Holdback: the slide that keeps a bolt back, what it does to the dial, and what it does to the door. */
export function HoldbackView({ query, chance }: HandoverViewProps) {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === query.get("profile")) ?? SHIPPED_PROFILES[0];
  const weight = weightOf(query);
  const session = useHandStore(
    useMemo(() => new HoldbackSession({ profile, weight }, chance), [profile, weight, chance]),
  );
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
        <WeightChoice query={query} />
        <Cautions cautions={CAUTIONS} source="common practice, no source" />
      </div>
    </div>
  );
}
