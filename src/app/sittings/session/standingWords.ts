import type { SittingSession } from "./sittingSession";

/** Why a sitting waits, and what its clock does, for whoever sits it. */
export function standingWords({ state, plan }: Pick<SittingSession, "state" | "plan">): string {
  if (state === "paused") return "You have paused. The clock is stopped.";
  const clock = plan.pauseAllowed
    ? "The clock was stopped meanwhile."
    : "This sheet allows no pause: the clock is running.";
  return `The page was reloaded. A try that you had begun is lost. ${clock}`;
}
