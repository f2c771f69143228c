import { useSelector } from "@xstate/react";
import { useMemo, useState } from "react";
import { drawCombination } from "../../../drill/combinations/drawCombination";
import type { DialEncoderProfile } from "../../../lock/profile";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import type { Chance } from "../../../statistics/chance";
import { learnZero } from "../../../zeroing/learnedZero";
import { profileCreep } from "../../../zeroing/ringClamp";
import { profileRules } from "../../../zeroing/zeroingRules";
import { profileRanges } from "../../../zeroing/zeroLock";
import { fitOf, weightOf } from "../../hand/dial/dialAddress";
import { FromFitting } from "../../hand/FromFitting";
import { useHandStore } from "../../hand/useHandStore";
import { WeightChoice } from "../../hand/WeightChoice";
import { Button } from "../../parts/controls/Button";
import { TabbedPanel } from "../../parts/controls/TabbedPanel";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import { PlayHand, PlayPanel } from "./FindThePlay";
import { ProveHand } from "./ProveHand";
import { ProvePanel } from "./ProvePanel";
import { SetZeroPanel } from "./SetZeroPanel";
import { PlaySession } from "./session/playSession";
import { ProveSession } from "./session/proveSession";
import { ZeroingSession } from "./session/zeroingSession";
import { useKeptZeroings } from "./useKeptZeroings";
import { useZeroingTunes } from "./useZeroingTunes";
import { ZeroingHand } from "./ZeroingHand";
import { ZeroingStrip } from "./ZeroingStrip";
import "../../parts/workplace.css";
import "./zeroing.css";

type Exercise = "set" | "prove" | "play";

/** The lock to be zeroed: the first dial-encoder lock that is shipped. */
function encoderProfile(): DialEncoderProfile {
  const found = SHIPPED_PROFILES.find((profile) => profile.kind === "dial-encoder");
  if (found === undefined || found.kind !== "dial-encoder") throw new Error("no dial-encoder lock is shipped");
  return found;
}

interface ZeroingScreenProps {
  readonly chance: Chance;
  /** What the address asks for. Silent help hides the loupe and the digital reading. */
  readonly query: URLSearchParams;
}

/** Zeroing: set a lock's zero from both sides, prove it by dialing, and find the play. */
export function ZeroingScreen({ chance, query }: ZeroingScreenProps) {
  const [isSilent, setSilent] = useState(query.get("help") === "silent");
  const weight = weightOf(query);
  const profile = useMemo(encoderProfile, []);
  const setup = useMemo(
    () => ({
      graduations: profile.graduations,
      rules: profileRules(profile),
      ranges: { ...profileRanges(profile), fitted: fitOf(query) },
      creep: profileCreep(profile),
      weight,
    }),
    [profile, weight, query],
  );
  const session = useHandStore(useMemo(() => new ZeroingSession(setup, chance), [setup, chance]));
  useKeptZeroings(session, profile.id);
  const play = useHandStore(useMemo(() => new PlaySession(setup, chance), [setup, chance]));
  const [exercise, setExercise] = useState<Exercise>("set");
  const [prove, setProve] = useState<ProveSession | null>(null);
  const { accepted } = useSelector(session.chart, memoryOf);
  const isSet = useSelector(session.chart, stateOf) === "zeroSet";
  const hasLoupe = !isSilent;
  const tabs = [
    { name: "set", label: "Set zero" },
    { name: "prove", label: "Prove it", closed: isSet ? undefined : "Set the zero in both directions first" },
    { name: "play", label: "Find the play" },
  ] as const;
  useZeroingTunes(session);

  const begin = (one: Exercise) => {
    if (one === exercise) return;
    if (one === "set") session.takeHold();
    if (one === "prove") {
      const combination = profile.asSet ?? drawCombination(profile, chance);
      const zero = learnZero(accepted);
      setProve(new ProveSession({ lock: session.lock, zero, profile, combination, weight }));
    }
    setExercise(one);
  };
  const restart = (isNew: boolean) => (isNew ? session.newLock() : session.again());
  const onReading = session.asked === null ? null : () => session.takeReading(performance.now());

  return (
    <main className="workplace">
      <h1 className="visually-hidden">Zeroing</h1>
      <div className="workplace-hand">
        {exercise === "set" && (
          <>
            <ZeroingStrip session={session} />
            <ZeroingHand
              {...{ session, profile, hasLoupe, onReading }}
              pointTo={isSilent ? null : session.asked}
              onRestart={restart}
            />
          </>
        )}
        {exercise === "prove" && prove !== null && <ProveHand prove={prove} hasLoupe={hasLoupe} />}
        {exercise === "play" && <PlayHand play={play} profile={profile} />}
      </div>
      <TabbedPanel label="Exercises" tabs={tabs} chosen={exercise} onChoose={begin} className="workplace-panels">
        <FromFitting query={query} />
        <p className="px-edge pt-4 text-small">
          <Button aria-pressed={isSilent} onClick={() => setSilent(!isSilent)}>
            Silent: no loupe, no reading
          </Button>
        </p>
        {exercise === "set" && <SetZeroPanel session={session} now={performance.now()} />}
        {exercise === "prove" && prove !== null && <ProvePanel prove={prove} />}
        {exercise === "play" && <PlayPanel play={play} profile={profile} />}
        <WeightChoice query={query} />
      </TabbedPanel>
    </main>
  );
}
