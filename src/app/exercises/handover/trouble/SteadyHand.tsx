import { type FormEvent, useId, useState } from "react";
import { faceText, readingText } from "../../../../dialing/words";
import type { LockCard } from "../../../../handover/trouble/trouble";
import { LONGEST_REST, MOST_OFF } from "../../../../handover/trouble/troubleBench";
import { reading } from "../../../../lock/dial";
import { Button } from "../../../parts/controls/Button";
import { signedText } from "../../../parts/signedText";

interface AmountProps {
  readonly label: string;
  readonly shown: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly onValue: (value: number) => void;
}

/** A slider with a button at each end for the last step. */
function Amount({ label, shown, value, low, high, step, onValue }: AmountProps) {
  const id = useId();
  const set = (to: number) => onValue(Math.min(high, Math.max(low, Math.round(to / step) * step)));
  return (
    <div className="trouble-amount grid grid-cols-[118px_34px_minmax(60px,1fr)_34px_96px] gap-3 items-center min-h-[38px] phone:grid-cols-[44px_minmax(0,1fr)_44px] phone:mb-3">
      <label htmlFor={id}>{label}</label>
      <Button aria-label={`${label}: less`} onClick={() => set(value - step)}>
        −
      </Button>
      <input
        id={id}
        type="range"
        min={low}
        max={high}
        step={step}
        value={value}
        aria-valuetext={shown}
        onChange={(event) => set(Number(event.currentTarget.value))}
      />
      <Button aria-label={`${label}: more`} onClick={() => set(value + step)}>
        +
      </Button>
      <output htmlFor={id}>{shown}</output>
    </div>
  );
}

interface SteadyHandProps {
  readonly card: LockCard;
  readonly isClosed: boolean;
  readonly onDial: (off: readonly number[], rest_s: number) => void;
}

/** A rig that dials every number exactly, as far off as asked. */
export function SteadyHand({ card, isClosed, onDial }: SteadyHandProps) {
  const { profile, combination } = card;
  const [off, setOff] = useState<readonly number[]>(() => combination.map(() => 0));
  const [rest, setRest] = useState(0);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    onDial(off, rest);
  };
  const asWritten = () => {
    setOff(combination.map(() => 0));
    setRest(0);
  };
  const shownAt = (number: number, by: number) =>
    by === 0 ? "as written" : `${readingText(reading(number + by, profile.graduations), profile)}, ${signedText(by)}`;
  return (
    <form onSubmit={submit}>
      <h3 className="mt-4 mb-1">Steady hand</h3>
      {combination.map((number, k) => (
        <Amount
          key={`${number}`}
          label={`Instead of ${faceText(number, profile)}`}
          shown={shownAt(number, off[k] ?? 0)}
          value={off[k] ?? 0}
          low={-MOST_OFF}
          high={MOST_OFF}
          step={0.1}
          onValue={(to) => setOff(off.map((one, j) => (j === k ? to : one)))}
        />
      ))}
      {profile.kind === "dial-encoder" && (
        <Amount
          label="Rest before the last"
          shown={`${rest} s`}
          value={rest}
          low={0}
          high={LONGEST_REST}
          step={1}
          onValue={setRest}
        />
      )}
      <p className="row mt-3">
        <Button type="submit" disabled={isClosed}>
          Dial and draw
        </Button>
        <Button onClick={asWritten}>All as written</Button>
      </p>
    </form>
  );
}
