import { useSelector } from "@xstate/react";
import { type FormEvent, useState } from "react";
import { readingText } from "../../../dialing/words";
import { reading } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";
import { hasStopsEnough } from "../../../zeroing/playMachine";
import { playWords } from "../../../zeroing/zeroWords";
import { againAct, newAct, stopAct } from "../../hand/handActs";
import { LockInHand } from "../../hand/LockInHand";
import { Button } from "../../parts/controls/Button";
import { NumberField } from "../../parts/controls/NumberField";
import { memoryOf } from "../../parts/page/ofChart";
import { TextTable } from "../../parts/TextTable";
import { CamWindow, camWords } from "./CamWindow";
import { Magnifier } from "./Magnifier";
import { ABOUT, HOW, OWN_DIAL, problemWords, SAY, TITLE } from "./playWords";
import { MOST_PLAY, type PlaySession } from "./session/playSession";

interface PlayProps {
  readonly play: PlaySession;
  readonly profile: Profile;
}

/** The dial with a window onto the cam behind it. */
export function PlayHand({ play, profile }: PlayProps) {
  const { lock } = play;
  const memory = useSelector(play.chart, memoryOf);
  const words = camWords(lock.camDeviation);
  return (
    <>
      <div className="advice">
        <p className="advice-say text-title leading-[1.3] phone:text-lead">{SAY}</p>
        <p className="advice-detail text-soft" role="status">
          {words}
        </p>
      </div>
      <LockInHand
        profile={profile}
        dial={lock.dial}
        held={play}
        ringTurn={lock.indexError}
        surround={20}
        said={[words]}
        digits="always"
        acts={[
          againAct(() => play.again(), "begins again"),
          newAct("New lock", "takes another lock", () => play.newLock()),
          stopAct(() => play.keepStop(), memory.turn === null || memory.mark !== null, {
            isNear: () => play.isAtStop,
            says: OWN_DIAL,
          }),
        ]}
        loupe={<Magnifier seen={lock.seen} profile={profile} />}
        window={<CamWindow deviation={lock.camDeviation} />}
      />
    </>
  );
}

function Answer({ play }: Pick<PlayProps, "play">) {
  const isReady = useSelector(play.chart, ({ context }) => hasStopsEnough(context));
  const [answer, setAnswer] = useState<number>();
  const isSize = answer !== undefined && answer >= 0 && answer <= MOST_PLAY;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isSize) play.answer(answer);
  };
  return (
    <form onSubmit={submit}>
      <NumberField label="The play is" looks={{ field: "row mt-4" }} size={5} value={answer} onNumber={setAnswer}>
        <span>graduations</span>
        <Button type="submit" className="primary" disabled={!(isSize && isReady)}>
          Check my answer
        </Button>
      </NumberField>
    </form>
  );
}

/** The exercise in words, the stops recorded so far, and the trainee's own number. */
export function PlayPanel({ play, profile }: PlayProps) {
  const memory = useSelector(play.chart, memoryOf);
  const { stops, mark } = memory;
  const shown = (stop: number) => readingText(reading(stop, profile.graduations), profile);
  return (
    <section className="panel zeroing-panel stack" aria-label={TITLE}>
      <h2>
        {TITLE} <small>{ABOUT}</small>
      </h2>
      <p>{HOW}</p>
      <TextTable
        className="zeroing-table mt-3"
        head={["turning", "the dial’s reading"]}
        rows={(["right", "left"] as const).map((side) => [side, stops[side].map(shown).join(", ") || "–"])}
      />
      <p className="font-semibold empty:-mb-3" role="status">
        {problemWords(memory)}
      </p>
      {mark === null ? (
        <Answer play={play} />
      ) : (
        <p className="zeroing-headline text-title" role="status">
          {playWords(mark)}
        </p>
      )}
    </section>
  );
}
