import { useMemo, useState } from "react";
import type { Help } from "../../../../dialing/advice";
import { combinationText } from "../../../../handover/change/changeFault";
import { fitOf, weightOf } from "../../../hand/dial/dialAddress";
import { HelpChoice } from "../../../hand/HelpChoice";
import { LockChoice } from "../../../hand/LockChoice";
import { useHandStore } from "../../../hand/useHandStore";
import { WeightChoice } from "../../../hand/WeightChoice";
import { useKeptJobs } from "../../../keeping/useKeptJobs";
import { Button } from "../../../parts/controls/Button";
import { Cautions } from "../parts/Cautions";
import type { HandoverViewProps } from "../parts/handoverViewProps";
import { ChangeHand } from "./ChangeHand";
import { ChangeInside } from "./ChangeInside";
import { ChangeResult } from "./ChangeResult";
import { ChangeNotes } from "./changeNotes";
import { CHANGEABLE, ChangeSession } from "./changeSession";
import { NewCombinationSheet } from "./NewCombinationSheet";
import "./change.css";

const CAUTIONS = [
  "Keep the door open and the bolt clear of its frame until the new combination has opened the lock three times.",
  "Where people can enter, keep someone inside who can open, after you have tested the inside release.",
  "The maker's written instructions decide which index, which key and which way. Only an authorized person may change it.",
  "On a real lock the key does not go fully home unless the wheels are lined up. Never force it. On this bench it always goes in.",
];

const CAUTIONS_SOURCE =
  "MIL-HDBK-1013/8 (1989), section 2, item d, for the three openings; the rest common practice, no source";

const HELPS: readonly Help[] = ["full", "counts", "silent"];

/** Changing the combination: by key on a wheel pack, on the dial of an encoder lock. */
export function ChangeView({ query, chance }: HandoverViewProps) {
  const [first] = CHANGEABLE;
  if (first === undefined) throw new Error("no shipped lock can be changed");
  const help = HELPS.find((one) => one === query.get("help")) ?? "full";
  const profile = CHANGEABLE.find(({ id }) => id === query.get("profile")) ?? first;
  const spec = useMemo(() => ({ profile, help, weight: weightOf(query), fit: fitOf(query) }), [profile, help, query]);
  const session = useHandStore(useMemo(() => new ChangeSession(spec, chance), [spec, chance]));
  useKeptJobs(session, ChangeNotes);
  const [isChoosing, setChoosing] = useState(false);
  const { setup } = session;
  return (
    <div className="workplace handover-workplace">
      <div className="workplace-hand">
        <div className="setup">
          <LockChoice locks={CHANGEABLE} lock={setup.profile} onLock={(one) => session.takeLock(one)} />
          <Button aria-haspopup="dialog" onClick={() => setChoosing(true)}>
            <span className="visually-hidden">Change </span>
            {combinationText(setup.present, setup.profile)} to {combinationText(setup.wanted, setup.profile)}{" "}
            <small>{setup.isOwn ? "own" : "drawn"}</small>
          </Button>
          <HelpChoice help={session.help} onHelp={(one) => session.setHelp(one)} />
        </div>
        <ChangeHand session={session} isOnce={false} />
      </div>
      <div className="workplace-panels">
        {session.help === "full" && (
          <div className="panel">
            <ChangeInside session={session} />
          </div>
        )}
        <ChangeResult session={session} />
        <WeightChoice query={query} />
        <Cautions cautions={CAUTIONS} source={CAUTIONS_SOURCE} />
      </div>
      <NewCombinationSheet
        setup={setup}
        isOpen={isChoosing}
        onClose={() => setChoosing(false)}
        onDraw={() => session.drawAnother()}
        onOwn={(numbers) => session.takeOwn(numbers)}
      />
    </div>
  );
}
