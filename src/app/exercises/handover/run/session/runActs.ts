import type { Caution } from "../../../../../handover/run/cautions";
import type { ActGroupTitle } from "../../../../../handover/run/nextStep";
import type { HandoverEvent } from "../../../../../handover/run/rules/handoverEvent";
import type { Milliseconds } from "../../../../../lock/dial";
import { replaceParts, sayFitted, takeApart } from "./doorFitting";
import type { HandoverSession } from "./handoverSession";
import { loosenRing, setZero, workOnRing } from "./ringWork";
import { dialBySimulation, turnBack } from "./simulatedHand";

/** Something one may do next. Nothing is ever greyed out: what cannot be says why. */
export interface RunAct {
  readonly label: string;
  readonly does: (session: HandoverSession, now: Milliseconds) => unknown;
  /** Left out where it is not offered: by the kind of lock, or because the dial does it. */
  readonly isOffered?: (session: HandoverSession) => boolean;
}

/** Acts that belong together. */
export interface ActGroup {
  readonly title: ActGroupTitle;
  readonly acts: readonly RunAct[];
  /** Cautions that belong to these acts. */
  readonly cautions: readonly Caution["id"][];
}

const sends = (event: HandoverEvent) => (session: HandoverSession, now: Milliseconds) => session.act(event, now);
const handsOff = ({ setup }: HandoverSession) => setup.isHandsOff;
const byHand = ({ setup }: HandoverSession) => !setup.isHandsOff;
const isEncoder = ({ setup }: HandoverSession) => setup.profile.kind === "dial-encoder";

const isFitted = ({ tray, run }: HandoverSession) => tray !== null && run.situation.fit !== "apart";
const isInParts = ({ run }: HandoverSession) => run.situation.fit === "apart";

/** Whoever is inside pulls the release, if it moves. */
function askInside(session: HandoverSession, now: Milliseconds): void {
  const { situation } = session.run;
  const fails = session.isReleaseBlocked && situation.wayOut === "unchecked" && situation.inside === "able";
  const isHeld = situation.door === "shut" && situation.bolt !== "retracted";
  session.act(fails && isHeld ? { type: "release.failed" } : { type: "door.opened", by: "inside" }, now);
}

/** What one may do, but for what has a form of its own: change, record, debrief. */
export const ACT_GROUPS: readonly ActGroup[] = [
  {
    title: "Fit",
    cautions: ["held", "chips"],
    acts: [
      { label: "The lock is fitted", does: sayFitted, isOffered: isInParts },
      { label: "Send for new parts", does: replaceParts, isOffered: isInParts },
      { label: "Take the lock apart again", does: takeApart, isOffered: isFitted },
    ],
  },
  {
    title: "Prepare",
    cautions: ["height", "operation", "security-height"],
    acts: [
      {
        label: "Measure the height",
        does: (session, now) =>
          session.act({ type: "mounting.measured", height_in: session.recorded.scene.height_in }, now),
      },
      { label: "Get the exception in writing", does: sends({ type: "authorization.asked" }) },
      { label: "Align the ring", does: workOnRing },
      { label: "Loosen the ring", does: loosenRing },
      ...(["right", "left"] as const).map(
        (side): RunAct => ({
          label: `Set the zero turning ${side}`,
          does: (session, now) => setZero(session, side, now),
          isOffered: (session) => isEncoder(session) && handsOff(session),
        }),
      ),
    ],
  },
  {
    title: "Lock",
    cautions: ["door"],
    acts: [
      {
        label: "Dial the combination",
        does: (session, now) => dialBySimulation(session, "trainee", now),
        isOffered: handsOff,
      },
      {
        label: "It does not open",
        does: sends({ type: "combination.dialed", by: "trainee", opened: false }),
        isOffered: byHand,
      },
      {
        label: "Throw the bolt",
        does: (session, now) => turnBack(session, "bolt.thrown", now),
        isOffered: handsOff,
      },
      { label: "Spin off", does: (session, now) => turnBack(session, "lock.spunOff", now), isOffered: handsOff },
      { label: "Rebuild the wheel pack", does: sends({ type: "pack.rebuilt" }), isOffered: (one) => !isEncoder(one) },
    ],
  },
  {
    title: "Door",
    cautions: ["egress", "holdback"],
    acts: [
      { label: "Shut the door", does: sends({ type: "door.shut" }) },
      { label: "Pull the door open", does: sends({ type: "door.opened", by: "outside" }) },
      { label: "Set the holdback", does: sends({ type: "holdback.set" }) },
      { label: "Release the holdback", does: sends({ type: "holdback.released" }) },
      {
        label: "Test the inside release",
        does: (session, now) => session.act({ type: "wayOut.checked", isFree: !session.isReleaseBlocked }, now),
      },
      { label: "Clear the inside release", does: sends({ type: "wayOut.cleared" }) },
      { label: "Have it opened by force", does: sends({ type: "door.opened", by: "emergency" }) },
    ],
  },
  {
    title: "People",
    cautions: ["inside"],
    acts: [
      { label: "Let the second person open it", does: (session, now) => dialBySimulation(session, "second", now) },
      {
        label: "Show an observer the release and let them in",
        does: sends({ type: "observer.entered", canOpen: true }),
      },
      { label: "Let someone in, shown nothing", does: sends({ type: "observer.entered", canOpen: false }) },
      { label: "Let the person inside out", does: sends({ type: "observer.left" }) },
      { label: "Knock: have it opened from inside", does: askInside },
    ],
  },
];
