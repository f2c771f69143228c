import { useSelector } from "@xstate/react";
import type { Turn } from "../../../lock/dial";
import type { ZeroingState } from "../../../zeroing/zeroingMachine";
import { sideResult } from "../../../zeroing/zeroResult";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import { lastWords } from "./lastWords";
import type { ZeroingSession } from "./session/zeroingSession";

const SAY: Readonly<Record<ZeroingState, (session: ZeroingSession) => string>> = {
  ringLoose: () => "Turn the ring until its index is under the line, then clamp it.",
  firstSeries: ({ asked }) => `Turn ${asked} only, onto zero. Stop. Record the stop.`,
  secondSeries: ({ asked }) => `Now turn ${asked} only, onto zero. Stop. Record the stop.`,
  zeroSet: (session) =>
    isRejected(session) ? "A side is shown to be off. Set it again." : "The zero is set in both directions. Prove it.",
  notSet: () => "The zero is not set.",
};

/** Whether either side is shown to be off. */
function isRejected({ memory, setup }: ZeroingSession): boolean {
  const { rules } = setup;
  return rules.order.some(
    (side) =>
      sideResult(
        memory.accepted[side].map(({ deviation }) => deviation),
        rules,
      ).verdict === "reject",
  );
}

/** The calibration on one plate: the ring, the two series, and the end. */
export function ZeroingStrip({ session }: { readonly session: ZeroingSession }) {
  const { setup, asked } = session;
  const state = useSelector(session.chart, stateOf);
  const memory = useSelector(session.chart, memoryOf);
  const [first, second] = setup.rules.order;
  const counted = (side: Turn) => {
    const count = memory.accepted[side].length;
    return count > memory.wanted[side] ? `${count} stops` : `${count} of ${memory.wanted[side]} stops`;
  };
  const steps = [
    { name: "ring", say: state === "ringLoose" ? "loose" : "clamped", isCurrent: state === "ringLoose" },
    { name: `turning ${first}`, say: counted(first), isCurrent: asked === first },
    { name: `turning ${second}`, say: counted(second), isCurrent: asked === second },
    { name: "zero", say: state === "zeroSet" ? "set" : "not set", isCurrent: state === "zeroSet" },
  ];
  return (
    <>
      <ol className="strip zeroing-steps" aria-label="Steps of the calibration">
        {steps.map(({ name, say, isCurrent }) => (
          <li key={name} className="strip-step" aria-current={isCurrent ? "step" : undefined}>
            <small>{name}</small>
            <div>{say}</div>
          </li>
        ))}
      </ol>
      <div className="advice">
        <p className="advice-say text-title leading-[1.3] phone:text-lead" data-testid="zeroing-state">
          {SAY[state](session)}
        </p>
        <p className="advice-detail text-soft" aria-hidden="true">
          {lastWords(session)}
        </p>
      </div>
    </>
  );
}
