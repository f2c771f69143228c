import type { Ref } from "react";
import { checksText } from "../../../../fitting/fitWords";
import { CAUTIONS } from "../../../../handover/run/cautions";
import {
  type FitResult,
  type HandoverResult,
  missingWords,
  resultOf,
  verdictWords,
} from "../../../../handover/run/checkRun";
import type { RunStep } from "../../../../handover/run/handoverRun";
import { FAULT_WORDS } from "../../../../handover/run/rules/faultWords";
import type { RunFitting } from "../../../../handover/run/runFitting";
import { stepWords } from "../../../../handover/run/stepWords";
import { countText } from "../../../../wording/amountWords";
import { Button } from "../../../parts/controls/Button";
import { Lines } from "../../../parts/Lines";
import { timeText } from "../../../parts/timeText";
import { Faults } from "../../fitting/FitDebrief";
import { recordOf } from "./kept/runRecord";
import { RecordPrint } from "./RecordPrint";
import { RunFiles } from "./RunFiles";
import type { HandoverSession } from "./session/handoverSession";

const clock = (at_ms: number) => timeText(Math.round(at_ms / 1000));

/** Every fault first: what happened, who is harmed, what to do instead. */
function FaultList({ result }: { readonly result: HandoverResult }) {
  if (result.faults.length === 0) return null;
  return (
    <>
      <h3>Faults</h3>
      <ol className="grid gap-3" aria-label="Faults">
        {result.faults.map(({ code, step, isUndone }) => {
          const { happened, harmed, instead, source } = FAULT_WORDS[code];
          return (
            <li key={`${step}-${code}`}>
              <strong>
                Step {step}
                {isUndone && ", undone in the debrief"}: {happened}
              </strong>
              <br />
              Harmed: {harmed} Instead: {instead} <small>({source})</small>
            </li>
          );
        })}
      </ol>
    </>
  );
}

/** What is wrong with the fit that was made, what that does to the lock, and what was not checked. */
function FitFound({ fit, fitting }: { readonly fit: FitResult; readonly fitting: RunFitting }) {
  const skipped = checksText(fit.skipped, fitting.assembly);
  return (
    <section aria-label="The fit">
      <h3>The fit</h3>
      {fit.faults.length === 0 ? (
        <p>{fit.isTogether ? "Nothing is wrong with the fit." : "The lock is in parts."}</p>
      ) : (
        <Faults faults={fit.faults} assembly={fitting.assembly} />
      )}
      {skipped !== "" && <p>Checks you did not make on this fit: {skipped}.</p>}
      <p className="text-soft text-small">
        Source: common practice, no source. On a real door the maker's written instructions decide sizes and torque.
      </p>
    </section>
  );
}

/** "2 min 5 s". */
function lengthText({ duration_ms }: HandoverResult): string {
  const seconds = Math.round(duration_ms / 1000);
  return seconds < 60 ? `${seconds} s` : `${Math.floor(seconds / 60)} min ${seconds % 60} s`;
}

interface StepRowProps {
  readonly step: RunStep;
  /** How many steps counted before it; null where it is undone. */
  readonly before: number | null;
  readonly onUndo: (steps: number) => void;
}

function StepRow({ step, before, onUndo }: StepRowProps) {
  return (
    <li className={before === null ? "text-soft" : undefined}>
      <p>
        <span className="text-soft">{clock(step.event.at_ms)}</span> {stepWords(step.event)}
        {before === null && <em> Undone in the debrief.</em>}
        {before !== null && (
          <Button className="slim ml-auto text-small print:hidden" onClick={() => onUndo(before)}>
            Undo from here<span className="visually-hidden">: {stepWords(step.event)}</span>
          </Button>
        )}
      </p>
      {step.missing.length > 0 && <p>Missing then: {missingWords(step.missing).join(" ")}</p>}
      {step.faults.length > 0 && <p className="text-soft text-small">{countText(step.faults.length, "fault")}</p>}
    </li>
  );
}

function Missing({ result }: { readonly result: HandoverResult }) {
  if (result.missing.length === 0) return null;
  return (
    <>
      <h3>Still missing</h3>
      <div data-testid="debrief-missing">
        <Lines of={missingWords(result.missing)} />
      </div>
    </>
  );
}

/** For each step how many counted before it, or null where it is undone. */
function countsBefore(steps: readonly RunStep[]): (number | null)[] {
  return steps.map(({ isUndone }, k) => (isUndone ? null : steps.slice(0, k).filter((step) => !step.isUndone).length));
}

interface DebriefProps {
  readonly session: HandoverSession;
  readonly onUndone: () => void;
  readonly ref: Ref<HTMLElement>;
}

/** The handover looked back on: what it came to, its faults, what is missing, the record, and every step with a way back. */
export function Debrief({ session, onUndone, ref }: DebriefProps) {
  const { run, setup } = session;
  const result = resultOf(run, setup.isHandsOff);
  const before = countsBefore(run.steps);
  const undo = (steps: number) => {
    session.goBackTo(steps);
    onUndone();
  };
  const record = recordOf(session, result);
  return (
    <section
      className="run-debrief scroll-mt-4 grid gap-4 pt-4 border-t-2 border-t-line print:flex print:flex-col print:p-0 print:border-t-0"
      aria-label="Debrief"
      ref={ref}
      tabIndex={-1}
    >
      <h2>Debrief</h2>
      <p className="result-headline text-title" data-testid="debrief-verdict">
        {verdictWords(result)}
      </p>
      <p className="text-small text-soft">
        {countText(result.faults.length, "fault")}, {countText(result.undoneSteps, "step")} undone, {lengthText(result)}
        .{result.isHandsOff && " A simulated hand did the dialing."} A practice result is not a certificate.
      </p>
      <FaultList result={result} />
      <Missing result={result} />
      {result.fit !== undefined && run.fitting !== null && <FitFound fit={result.fit} fitting={run.fitting} />}
      {record !== null && <RecordPrint record={record} />}
      <RunFiles session={session} record={record} />
      <h3>Step by step</h3>
      <ol className="debrief-steps" aria-label="Step by step">
        {run.steps.map((step, k) => (
          // Steps are only ever added.
          // biome-ignore lint/suspicious/noArrayIndexKey: a step has no other name than its place
          <StepRow key={k} step={step} before={before[k] ?? null} onUndo={undo} />
        ))}
      </ol>
      <h3>Cautions</h3>
      <ul>
        {CAUTIONS.map(({ id, text, source }) => (
          <li key={id}>
            {text} <small>({source})</small>
          </li>
        ))}
      </ul>
    </section>
  );
}
