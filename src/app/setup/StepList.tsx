import { SETUP_STEPS, type SetupStep } from "./session/setupSession";

const NAMES: Readonly<Record<SetupStep, string>> = {
  source: "Source",
  connect: "Connect",
  zero: "Zero",
  checks: "Checks",
  done: "Done",
};

/** Where a line above a step says how it stands; the words below say it too. */
const LINES = { done: "border-accent", now: "border-accent", next: "border-hair" } as const;
const WORDS = { done: "done", now: "now", next: "to do" } as const;

/** What is done, what is done now, and what is left. */
export function StepList({ step }: { readonly step: SetupStep }) {
  const now = SETUP_STEPS.indexOf(step);
  return (
    <ol className="plain flex gap-3 text-small" aria-label="Steps of the setup">
      {SETUP_STEPS.map((one, k) => {
        const state = k < now ? "done" : k === now ? "now" : "next";
        return (
          <li
            key={one}
            className={`flex-1 pt-3 border-t-2 ${LINES[state]}`}
            aria-current={state === "now" ? "step" : undefined}
          >
            <span className={state === "now" ? "font-semibold" : ""}>{NAMES[one]}</span>
            <small className="block">{WORDS[state]}</small>
          </li>
        );
      })}
    </ol>
  );
}
