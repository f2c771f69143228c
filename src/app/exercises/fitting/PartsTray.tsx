import { useSelector } from "@xstate/react";
import { useState } from "react";
import { HINDRANCE_WORDS } from "../../../fitting/fitWords";
import type { Washer } from "../../../fitting/washerStack";
import { Button } from "../../parts/controls/Button";
import { NumberField } from "../../parts/controls/NumberField";
import { Select } from "../../parts/controls/Select";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import { CAUTION_SOURCE } from "./fittingCautions";
import type { FittingSession } from "./fittingSession";
import { PartRow } from "./PartRow";
import { partsOf } from "./partActs";
import { StepCaution } from "./StepCaution";

interface TrayProps {
  readonly session: FittingSession;
}

interface MoreProps extends TrayProps {
  /** Hears that the part was acted on. */
  readonly onPress: () => void;
}

const STACKS: readonly (readonly Washer[])[] = [
  [],
  ["flat"],
  ["spring"],
  ["flat", "flat"],
  ["flat", "spring"],
  ["spring", "flat"],
  ["flat", "flat", "spring"],
  ["spring", "flat", "flat"],
  ["flat", "spring", "spring"],
];
const stackText = (stack: readonly Washer[]) => (stack.length === 0 ? "none" : stack.join(", "));

/** Washers go in before the body is hung; after that they are told. */
function WasherChoice({ session, onPress }: MoreProps) {
  const isClosed = useSelector(session.chart, stateOf) === "declared";
  const { washers, body } = session.assembly;
  if (body !== null) return <p className="text-small text-soft">Washers, from the cam out: {stackText(washers)}</p>;
  return (
    <label className="row gap-2 text-small">
      Washers, from the cam out
      <Select
        value={stackText(washers)}
        disabled={isClosed}
        choices={STACKS.map((stack) => [stackText(stack), stackText(stack)])}
        onChoice={(chosen) => {
          const stack = STACKS.find((one) => stackText(one) === chosen);
          onPress();
          if (stack !== undefined) session.act({ type: "washers.put", washers: stack });
        }}
      />
    </label>
  );
}

/** Sawing, while the dial is out. */
function CutField({ session, onPress }: MoreProps) {
  const isClosed = useSelector(session.chart, stateOf) === "declared";
  const { spindle, dialIn } = session.assembly;
  const [asked_mm, setAsked] = useState(spindle.length_mm);
  if (dialIn !== null) return <p className="text-small text-soft">Take the dial out to work on it.</p>;
  return (
    <div className="row gap-2 text-small">
      <NumberField
        label="Cut to, mm from the dial's back"
        value={asked_mm}
        onNumber={(typed) => setAsked(typed ?? 0)}
        size={6}
      />
      <Button
        className="slim"
        disabled={isClosed}
        onClick={() => {
          onPress();
          session.act({ type: "spindle.cut", length_mm: asked_mm });
        }}
      >
        Saw off
      </Button>
    </div>
  );
}

/** What of a part is no button. */
const MORE: Readonly<Record<string, typeof WasherChoice>> = { "Lock body": WasherChoice, Spindle: CutField };

/** The parts in the tray, and what one can do with each. Nothing is locked: what stands in the way says so. */
export function PartsTray({ session }: TrayProps) {
  const { stopped, acts } = useSelector(session.chart, memoryOf);
  const [pressed, setPressed] = useState("");
  const sentence = stopped === null ? null : HINDRANCE_WORDS[stopped];
  return (
    <section className="panel" aria-label="Parts">
      <h2 tabIndex={-1}>Parts</h2>
      <p className="visually-hidden" role="status">
        {sentence}
      </p>
      {acts === 0 && (
        <div className="mb-3">
          <StepCaution id="door" />
        </div>
      )}
      {partsOf(session.assembly).map((part) => {
        const More = MORE[part.name];
        return (
          <PartRow
            key={part.name}
            session={session}
            part={part}
            stopped={pressed === part.name ? sentence : null}
            onPress={() => setPressed(part.name)}
          >
            {More !== undefined && (
              <More key={session.assembly.spares} session={session} onPress={() => setPressed(part.name)} />
            )}
          </PartRow>
        );
      })}
      <p className="mt-3 text-soft text-fine">Cautions: {CAUTION_SOURCE}. The maker's written instructions decide.</p>
    </section>
  );
}
