import type { Motion } from "../../../dialing/motion";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import type { BenchTelling } from "../../../school/wire/liveWire";
import { DIALED_HERE, type HandledAttempt } from "../../keeping/here/dialedHere";
import type { SessionHere } from "../../keeping/sittingSlot";
import { SITTING_SLOT } from "../../keeping/sittingSlot";

type State = Extract<BenchTelling, { kind: "state" }>["state"];

/** What a page tells of the work on it. */
export type WorkState = Omit<State, "personId" | "last" | "unsent">;

/** An attempt under the hand, and whether it has ended. */
export interface Dialed extends HandledAttempt {
  readonly motion: Motion;
  readonly isEnded: boolean;
}

/** What is worked on in this page. */
export interface WorkHere {
  readonly state: WorkState;
  readonly dialed: Dialed | null;
}

/** Pages on which one works at a lock; on any other nobody is at work. */
const EXERCISES: readonly string[] = ["fitting", "zeroing", "handover"];

/** Which leg of how many, the draw being the last. */
function legOf({ attempt, chart, isEnded }: Dialed): WorkState["leg"] {
  const of = attempt.combination.length + 1;
  const { value, context } = chart.getSnapshot();
  return { at: isEnded || value === "drawing" ? of : context.number + 1, of };
}

const dialedState = (dialed: Dialed) => ({ profileId: dialed.attempt.profile.id, leg: legOf(dialed) });

function onBench(): WorkHere {
  const { bench } = DIALED_HERE;
  if (bench === null) return { state: { exercise: "bench", isWaiting: true }, dialed: null };
  const { attempt, chart, turnedBy, recording, outcome } = bench;
  const dialed = { attempt, chart, turnedBy, motion: recording, isEnded: outcome !== null };
  return { state: { exercise: "bench", ...dialedState(dialed), isWaiting: dialed.isEnded }, dialed };
}

function inSitting(session: SessionHere | null): WorkHere {
  if (session === null) return { state: { exercise: "sittings", isWaiting: true }, dialed: null };
  const { inHand, sheet, isOver } = session;
  const dialed = inHand?.kind === "dialing" ? inHand : null;
  const ofDial = dialed === null ? {} : dialedState(dialed);
  return { state: { exercise: "sittings", sheet: sheet.title, ...ofDial, isWaiting: isOver }, dialed };
}

/** What is worked on. @param path - the page that is open: "bench", "sittings" */
export function workHere(path: string): WorkHere {
  if (path === "bench") return onBench();
  if (path === "sittings") return inSitting(SITTING_SLOT.here?.session ?? null);
  return { state: { exercise: path === "" ? "start" : path, isWaiting: !EXERCISES.includes(path) }, dialed: null };
}

/** A profile that the other side may not have. */
export const ownProfileOf = ({ profile }: HandledAttempt["attempt"]): object =>
  SHIPPED_PROFILES.includes(profile) ? {} : { ownProfile: JSON.parse(JSON.stringify(profile)) };
