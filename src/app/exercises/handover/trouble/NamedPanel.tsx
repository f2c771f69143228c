import { useSelector } from "@xstate/react";
import { troubleSentence } from "../../../../handover/trouble/troubleWords";
import { focusDial } from "../../../hand/dial/focusDial";
import { Button } from "../../../parts/controls/Button";
import { memoryOf } from "../../../parts/page/ofChart";
import { takeFocus } from "../../../parts/page/takeFocus";
import type { TroubleSession } from "./troubleSession";

interface NamedPanelProps {
  readonly session: TroubleSession;
  /** What follows where it stands. */
  readonly note: string;
  readonly label: string;
  readonly onStand: () => void;
}

/** A diagnosis: left to stand, or taken back. */
export function NamedPanel({ session, note, label, onStand }: NamedPanelProps) {
  const { named } = useSelector(session.chart, memoryOf);
  if (named === null) return null;
  const takeBack = () => {
    session.withdraw();
    focusDial();
  };
  return (
    <section className="panel" aria-label="Your diagnosis">
      <h2 ref={takeFocus} tabIndex={-1}>
        Your diagnosis
      </h2>
      <p className="text-title">{troubleSentence(named)}.</p>
      <p className="text-soft">{note}</p>
      <p className="row mt-3">
        <Button className="primary" onClick={onStand}>
          {label}
        </Button>
        <Button onClick={takeBack}>Take it back</Button>
      </p>
    </section>
  );
}
