import { type FormEvent, type KeyboardEvent, useEffect, useRef, useState } from "react";
import type { Graduations } from "../../../lock/dial";
import { FARTHEST_STOP } from "../../../progress/stops/worstStop";
import { focusDial } from "../../hand/dial/focusDial";
import { Button } from "../../parts/controls/Button";

const QUICK: readonly Graduations[] = [0, 0.2, 0.5, 1, 2];

/** What was typed, graduations; null where it is no size of a stop error. */
export function readEstimate(text: string): Graduations | null {
  const size = text.trim() === "" ? Number.NaN : Number(text.trim().replace(",", "."));
  return size >= 0 && size <= FARTHEST_STOP ? size : null;
}

interface EstimatePanelProps {
  /** The estimate, or "skipped". */
  readonly onAnswer: (answer: Graduations | "skipped") => void;
}

/** Asks how far off the worst stop was, before anything of it is shown. A digit and Enter, or one tap, is enough. */
export function EstimatePanel({ onAnswer }: EstimatePanelProps) {
  const [text, setText] = useState("");
  const [isWrong, setWrong] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    // On a touch screen the focus would bring up a keyboard over the dial.
    if (matchMedia("(hover: hover)").matches) input.current?.focus({ preventScroll: true });
  }, []);
  const answer = (given: Graduations | "skipped") => {
    onAnswer(given);
    focusDial();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const size = readEstimate(text);
    setWrong(size === null);
    if (size !== null) answer(size);
  };
  const onKeyDown = (event: KeyboardEvent) => event.key === "Escape" && answer("skipped");
  return (
    <section className="panel estimate" aria-labelledby="estimate-asks">
      <h2 className="text-lead" id="estimate-asks">
        How far off was your worst stop?
      </h2>
      <p className="mb-4 text-soft">Enter it by feel, in graduations, past or short. Then you see the result.</p>
      <form onSubmit={submit} onKeyDown={onKeyDown}>
        <div className="row mt-3">
          {QUICK.map((size) => (
            <Button key={size} className="min-w-[52px]" onClick={() => answer(size)}>
              {size}
              <span className="visually-hidden"> graduations off</span>
            </Button>
          ))}
        </div>
        <div className="row mt-3">
          <label htmlFor="estimate-size">
            Other<span className="visually-hidden"> size, graduations off</span>
          </label>
          <input
            id="estimate-size"
            ref={input}
            className="field"
            inputMode="decimal"
            size={5}
            aria-invalid={isWrong}
            aria-describedby={isWrong ? "estimate-problem" : undefined}
            value={text}
            onChange={(event) => setText(event.currentTarget.value)}
          />
          <Button type="submit" className="primary">
            Show the result
          </Button>
          <Button aria-keyshortcuts="Escape" onClick={() => answer("skipped")}>
            Skip <kbd>Esc</kbd>
          </Button>
        </div>
        {isWrong && (
          <p id="estimate-problem" className="mt-3 text-accent" role="alert">
            Enter a number of graduations from 0 to {FARTHEST_STOP}.
          </p>
        )}
      </form>
    </section>
  );
}
