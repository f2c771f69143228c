import { useSelector } from "@xstate/react";
import { useEffect, useMemo, useRef, useState } from "react";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import { handOf } from "../../../realdial/sources/handOf";
import { againAct, newAct, withDigits } from "../../hand/handActs";
import { heldBy } from "../../hand/heldDial";
import { keysHelp } from "../../hand/keysHelp";
import { useCountedOpening, useDigits } from "../../hand/useDigits";
import { useHandStore } from "../../hand/useHandStore";
import { DialogGone } from "../../parts/controls/DialogGone";
import { Message } from "../../parts/Message";
import { FilesGoneLine } from "../../parts/page/FilesGoneLine";
import { fetchedLater } from "../../parts/page/fetchedLater";
import { stateOf } from "../../parts/page/ofChart";
import { onFirstSign } from "../../parts/page/onFirstSign";
import { useRemembered } from "../../parts/storage/remembered";
import { useMessages } from "../../parts/useMessages";
import { playbackOf } from "../../replay/playback";
import { usePlayback } from "../../replay/usePlayback";
import { Announcer } from "./Announcer";
import { BenchHand } from "./BenchHand";
import type { SheetName } from "./BenchSheets";
import { addressOf, benchAddress, unknownSettings } from "./benchAddress";
import { BenchSession } from "./benchSession";
import { eventBegun, measureEvents, useEventDone } from "./eventCost";
import { BestAttempts, GHOSTS, ghostPath } from "./ghosts";
import { SetupBar } from "./SetupBar";
import { useKeptAttempts } from "./useKeptAttempts";
import "../../parts/workplace.css";

const SWITCH = ["off", "on"] as const;

/** Whether an own estimate is still to come before anything of the attempt is shown. Full help shows every stop. */
const waitsForEstimate = ({ setup, outcome, estimate }: BenchSession) =>
  setup.help !== "full" && estimate === null && outcome?.worstStop !== null;

/** What stands beside the dial comes once the dial can be turned, into the place kept for it. */
const BenchPanels = fetchedLater(
  async () => (await import("./BenchPanels")).BenchPanels,
  <div className="workplace-panels" />,
  () => (
    <div className="workplace-panels">
      <section>
        <FilesGoneLine />
      </section>
    </div>
  ),
);
const BenchSheets = fetchedLater(async () => (await import("./BenchSheets")).BenchSheets, null, DialogGone);

interface BenchScreenProps {
  /** What the address asks for. */
  readonly query: URLSearchParams;
  /** For a bench whose address asks for no seed. */
  readonly seed: number;
}

/** The bench: a lock to dial, and what there is to see of it. */
export function BenchScreen({ query, seed }: BenchScreenProps) {
  const address = useMemo(() => {
    measureEvents(query.get("measure") === "on");
    const read = benchAddress(query, { help: "full", seed });
    return { ...read, problems: [...unknownSettings(query), ...read.problems] };
  }, [query, seed]);
  const session = useHandStore(useMemo(() => new BenchSession(address.setup, address.chance), [address]));
  useKeptAttempts(session);
  useEventDone(session.version);
  const [sheet, setSheet] = useState<SheetName | null>(null);
  useEffect(() => onFirstSign(() => void BenchSheets.fetchAhead().catch(() => undefined)), []);
  const [asks, setAsks] = useRemembered("estimate", SWITCH);
  const [ghost, setGhost] = useRemembered("ghost", GHOSTS);
  const best = useRef(new BestAttempts());

  const { setup, outcome } = session;
  const messages = useMessages(address.problems);
  const digits = useDigits(setup.help === "full" ? "fading" : "none");
  useCountedOpening(outcome?.opened === true ? outcome : null, setup.help);
  const state = useSelector(session.chart, stateOf);
  const own = { profile: session.attempt.profile, combination: session.attempt.combination, ...session.recording };
  const replay = usePlayback(() => playbackOf(own));
  const { leave } = replay;

  const held = useMemo(() => {
    const turnBy = (by: Graduations, at: Milliseconds) => {
      eventBegun();
      leave();
      session.turnBy(by, at);
    };
    return heldBy(session, { turnBy });
  }, [session, leave]);
  const acts = [
    againAct(() => {
      leave();
      session.again();
    }),
    newAct("New numbers", "draws new numbers", () => {
      leave();
      session.drawAnother();
    }),
  ];

  useEffect(() => {
    // The address follows the bench, so that it can be kept and sent; a seed or a measure asked for stays as it is.
    const { hash } = location;
    // Whoever went on to another page while this one was being drawn is there.
    const isHere = /^#\/?bench\b/.test(hash);
    if (isHere && !hash.includes("seed=")) history.replaceState(null, "", addressOf(setup));
  }, [setup]);

  const { playback } = replay;
  const isLive = playback === null;
  const shown = playback?.attempt ?? session.attempt;
  const lock = playback?.attempt ?? session.lock;
  useEffect(() => {
    if (outcome?.opened !== true || session.faults().length > 0) return;
    best.current.note(session.attempt, outcome.time_ms, handOf(session.turnedBy.forRecord));
  }, [outcome, session]);
  const hand = handOf(session.turnedBy.forRecord);
  const ghostStops = useMemo(
    () => ghostPath(ghost, shown, session.recording.start.dial, best.current, hand),
    [ghost, shown, session.recording.start.dial, hand],
  );
  // The same through every move of the dial, which changes nothing of it.
  const { setFileProblem } = messages;
  const setupBar = useMemo(
    () => (
      <SetupBar
        setup={setup}
        onProfile={(profile) => {
          leave();
          session.takeLock(profile, "as-set");
        }}
        onHelp={(help) => session.change({ ...setup, help })}
        asksEstimate={asks === "on"}
        onCombination={() => setSheet("combination")}
        onMore={() => setSheet("more")}
        onFileProblem={setFileProblem}
      />
    ),
    [setup, session, leave, asks, setFileProblem],
  );
  const isWithheld = isLive && asks === "on" && waitsForEstimate(session);
  const recording = outcome !== null || playback !== null ? (playback?.recording ?? session.recording) : null;

  return (
    <main className="workplace">
      <h1 className="visually-hidden">Bench</h1>
      <div className="workplace-hand">
        {messages.texts.map((text) => (
          <Message key={text} text={text} onClose={() => messages.close(text)} />
        ))}
        {setupBar}
        <BenchHand
          {...{ lock, session, isLive, isWithheld, acts, held }}
          state={playback?.state ?? state}
          onLeave={leave}
        />
      </div>
      <BenchPanels
        {...{ session, query, replay, lock, shown, isWithheld }}
        reading={digits.strength}
        ghost={ghostStops}
        recording={recording}
        onGhost={setGhost}
        onShare={() => setSheet("share")}
        ghostKind={ghost}
      />
      <Announcer session={session} isWithheld={isWithheld} />
      {sheet !== null && (
        <BenchSheets
          {...{ session, sheet, replay }}
          onClose={() => setSheet(null)}
          asksEstimate={asks === "on"}
          onAsksEstimate={(isOn) => setAsks(isOn ? "on" : "off")}
          keys={keysHelp(withDigits(acts, digits))}
        />
      )}
    </main>
  );
}
