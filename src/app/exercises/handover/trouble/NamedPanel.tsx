import { useSelector } from "@xstate/react";
import { useEffect, useRef } from "react";
import { troubleSentence } from "../../../../handover/trouble/troubleWords";
import { focusDial } from "../../../hand/dial/focusDial";
import { Button } from "../../../parts/controls/Button";
import { memoryOf } from "../../../parts/page/ofChart";
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
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  if (named === null) return null;
  const takeBack = () => {
    session.withdraw();
    focusDial();
  };
  return (
    <section className="panel" aria-label="Your diagnosis">
      <h2 ref={heading} tabIndex={-1}>
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
