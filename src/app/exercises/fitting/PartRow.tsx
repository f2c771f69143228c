import { useSelector } from "@xstate/react";
import { type MouseEvent, type ReactNode, useRef } from "react";
import { flushSync } from "react-dom";
import { Button } from "../../parts/controls/Button";
import { stateOf } from "../../parts/page/ofChart";
import type { FittingSession } from "./fittingSession";
import type { OfferedAct, TrayPart } from "./partActs";
import { StepCaution } from "./StepCaution";

interface PartRowProps {
  readonly session: FittingSession;
  readonly part: TrayPart;
  /** What stood in the way of what was just tried with this part, in a sentence, or null. */
  readonly stopped: string | null;
  readonly onPress: () => void;
  /** What of the part is no button. */
  readonly children?: ReactNode;
}

function doAct(session: FittingSession, act: OfferedAct["act"]): void {
  if (act === "strike") session.hangStrike();
  else if (act === "ring-by-eye" || act === "ring-by-bushing") session.putRing(act === "ring-by-bushing");
  else if ("touch" in act) session.touchBoard(act.touch);
  else session.act(act);
}

/** A part of the tray: how it stands, what one can do with it as it stands, and what to mind. */
export function PartRow({ session, part, stopped, onPress, children }: PartRowProps) {
  const isClosed = useSelector(session.chart, stateOf) === "declared";
  const row = useRef<HTMLFieldSetElement>(null);
  const { assembly, lock } = session;
  const stands = part.stands(assembly);
  const press = ({ currentTarget }: MouseEvent, act: OfferedAct["act"]) => {
    onPress();
    flushSync(() => doAct(session, act));
    // What was pressed is no longer offered: the hand stays at the part, which says how it stands now.
    if (!currentTarget.isConnected) row.current?.focus({ preventScroll: true });
  };
  return (
    <fieldset
      ref={row}
      tabIndex={-1}
      className="grid grid-cols-[132px_minmax(0,1fr)] gap-x-4 gap-y-2 py-3 border-t border-t-hair phone:grid-cols-[minmax(0,1fr)]"
      aria-label={`${part.name}: ${stands}`}
    >
      <p>
        <strong>{part.name}</strong>{" "}
        <span className="block text-small text-soft leading-[1.3] phone:inline">{stands}</span>
      </p>
      <div className="stack">
        {children}
        <div className="row gap-2">
          {part.acts(assembly, lock).map(({ label, act }) => (
            <Button key={label} className="slim" disabled={isClosed} onClick={(event) => press(event, act)}>
              {label}
            </Button>
          ))}
        </div>
        {stopped !== null && (
          // It is heard from the tray.
          <p className="text-small font-semibold" aria-hidden="true">
            {stopped}
          </p>
        )}
        <StepCaution id={part.caution?.(assembly) ?? null} />
      </div>
    </fieldset>
  );
}
