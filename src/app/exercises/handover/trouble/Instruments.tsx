import { useSelector } from "@xstate/react";
import { nextLook } from "../../../../handover/trouble/nextLook";
import { Button } from "../../../parts/controls/Button";
import { stateOf } from "../../../parts/page/ofChart";
import { seenRow } from "./observationRows";
import { SteadyHand } from "./SteadyHand";
import type { TroubleSession } from "./troubleSession";

const now = () => performance.now();

/** The gauges, the rules and the steady hand. None of them says what is the matter. */
export function Instruments({ session }: { readonly session: TroubleSession }) {
  const { task, bench, setup } = session;
  const isClosed = useSelector(session.chart, stateOf) !== "measuring";
  const { lastSeen } = session;
  const last = lastSeen === undefined ? null : seenRow(lastSeen, bench.log.length - 1, task.card);
  const gauges = [
    { label: "Cam after a left turn", use: () => session.readCam("left", now()) },
    { label: "Cam after a right turn", use: () => session.readCam("right", now()) },
    { label: "Pull left", use: () => session.pull("left", now()) },
    { label: "Pull right", use: () => session.pull("right", now()) },
    { label: "Turn all round", use: () => session.turnRound(now()) },
    { label: "Push and pull", use: () => session.pushPull(now()) },
    { label: "Read the ring's marks", use: () => session.readMarks(now()) },
    { label: "Compare numbers with the rules", use: () => session.holdAgainstRules(now()) },
  ];
  return (
    <section className="panel" aria-label="Instruments">
      <h2>
        Instruments <small>plus is left</small>
      </h2>
      {setup.help === "full" && !isClosed && (
        <p className="pl-4 border-l-4 border-l-accent">{nextLook(task.card, bench.log)}</p>
      )}
      <p className="row mt-3">
        {gauges.map(({ label, use }) => (
          <Button key={label} disabled={isClosed} onClick={use}>
            {label}
          </Button>
        ))}
      </p>
      <p className="mt-3 text-small text-soft">
        The cam gauge shows how far the cam is from the reading at the index; the pull gauge, how far the hand goes
        before the dial moves; turned all round, it shows the least and the most of that. Readings spread a little.
      </p>
      <SteadyHand
        key={session.round}
        card={task.card}
        isClosed={isClosed}
        onDial={(off, rest) => session.dial(off, rest, now())}
      />
      <p className="trouble-last min-h-[1.45em] mt-3 font-semibold" role="status">
        {last === null ? "" : `${last.done}: ${last.showed}.`}
      </p>
    </section>
  );
}
