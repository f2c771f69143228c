import type { Hindrance } from "../../../fitting/fittingAct";
import { HINDRANCE_WORDS as FIT_WORDS } from "../../../fitting/fitWords";
import { LOCK_WORDS } from "../../../lock/lockWords";
import { problemsOf, type Words } from "../../../wording/problem";

/** Why something cannot be done as things stand at the door. */
const HINDRANCE_WORDS = {
  "lock-in-parts": "The lock is in parts. Fit it first.",
  "door-held-open": "The lock is in parts. Hold the door open until it is fitted.",
  "lock-on-door": "The lock is fitted. Take it apart first.",
  "lock-as-found": "This lock came on its door. There is nothing to fit.",
  "holdback-to-release": "The holdback is set. Release it first.",
  "no-strike": "There is no strike on the frame, so the bolt holds nothing. Take the lock apart and hang the strike.",
  "board-silent":
    "The lock is dead: it reads nothing, and no number opens it. Take it apart, and look at its wires and its board.",
  "board-finds-no-encoder":
    "The lock does not find its dial: it reads nothing, and no number opens it. Take it apart, and look at its wires.",
  "board-unsteady":
    "Readings wander while the dial is at rest, so the lock takes no zero and no number. Take it apart, and run the self-check.",
  "height-measured": "You have already measured the height.",
  "height-unmeasured": "Measure the height first.",
  "height-in-range": "The height is within 34 to 48 inches. There is nothing to settle.",
  "height-settled": "The height is already settled in writing.",
  "ring-aligned": "The ring is already aligned and clamped.",
  "ring-loose": "The ring is already loose.",
  "zero-by-ring": "A wheel pack learns no zero. Its ring does that job.",
  "spoiled-pack-opens-never": "The wheel pack is spoiled: no numbers open it.",
  "pack-to-rebuild": "The wheel pack is spoiled. Rebuild it first.",
  "pack-not-spoiled": "The wheel pack is not spoiled. There is nothing to rebuild.",
  "bolt-thrown": "The bolt is already thrown.",
  "lock-spun-off": "The lock is spun off. Dial the combination to open it.",
  "bolt-back": "The bolt is already back.",
  "holdback-set": "The holdback is already set.",
  "bolt-not-back": "The bolt is thrown. The holdback can only hold a bolt that is back: dial the lock open first.",
  "holdback-released": "The holdback is already released.",
  "someone-inside": "Someone is already inside.",
  "nobody-inside": "Nobody is inside.",
  "person-shut-in": "The door is shut. Open it first, then let the person out.",
  "release-test-shut": "Test the inside release with the door open. Open it first.",
  "release-blocked": "The inside release does not move. Clear it first.",
  "release-not-blocked": "You have not found anything in the way of the inside release.",
  "door-not-locked": "The door is not locked. Pull it open.",
  "nobody-to-pull": "Nobody is inside to pull the release.",
  "release-works": "The inside release was tested: it works.",
  "release-known-blocked": "You already know that the inside release does not move.",
  "door-shut": "The door is already shut.",
  "door-open": "The door is already open.",
  "door-locked": "The door is locked. Dial the lock open first.",
  "knock-nobody": "You knock. Nobody is inside.",
  "knock-not-shown": "You knock. The person inside was not shown the release, and waits.",
  "knock-blocked": "You knock. The person inside pulls the release, but it does not move.",
  "back-is-inside": "The door is shut and the back of the lock is inside. Open the door first.",
  "shut-door": "The door is shut. Open it first.",
  "handed-over": "The door is handed over. Start again, or go back in the debrief.",
  "bolt-came-back": "The bolt is back: the lock opened.",
  "bolt-part-back": "The bolt is only part of the way back. Turn {turn} until the dial stops.",
} as const satisfies Words;

/** What a recorded step says and its scene or lock does not allow, and how to fix it. */
const MISFIT_WORDS = {
  "fit-act-hindered":
    "has an act that cannot be done, acts[{index}], {type}, so take it out or add what came before it: {hindrance}",
  "fit-in-parts":
    "says that the lock is fitted, but after its acts parts are still in the tray: add the acts that put it together, or take it out",
  "fit-of-spoiled-parts":
    "says that the lock is fitted, but its acts spoil the parts, and no good lock comes of them: take it out, or the acts that spoil them",
  "parts-not-spoiled":
    "brings new parts, but after its acts the parts are not spoiled: take it out, or add the acts that spoiled them",
  "fit-differs":
    "says isFaultless {isFaultless} and isChecked {isChecked}, which does not follow from its acts and checks: set isFaultless to {isGood} and isChecked to {isWhole}",
  "height-differs": "says {said} inches, but the scene's height_in is {height}: make the two the same",
  "zero-of-wheel-pack":
    "does not fit the lock, a wheel pack, whose ring is its only zero: take it out, or name a dial encoder as the profile",
  "no-key":
    "does not fit the lock, a dial encoder, which has neither change key nor wheels: take it out, or name a wheel pack as the profile",
  "no-wheels-in-line": "does not fit the lock, a dial encoder, which has no wheels that stay in line: take it out",
  "opened-against-holdback":
    "says that the lock opened, but the holdback holds its bolt and the dial does not turn: set opened to false, or release the holdback before it",
  "release-said-free":
    "says that the release is free, but the scene has it blocked and nobody has cleared it: correct the step, or isReleaseBlocked in the scene",
  "release-said-blocked":
    "says that the release does not move, but nothing is in its way: correct the step, or isReleaseBlocked in the scene",
  "release-said-failed":
    "says that the release did not move, but nothing is in its way: correct the step, or isReleaseBlocked in the scene",
  "opened-by-blocked-release":
    "says that the door was opened from inside, but its release is blocked: use release.failed, correct the step, or isReleaseBlocked in the scene",
  "parts-not-drawn": "brings other new parts than seed {seed} draws: this handover was not made with its seed",
  "back-too-far":
    "goes back to step {step}, but only {length:step counts|steps count} by then: name {length} or fewer, or take it out",
  hindered: "cannot have happened, so take it out or add what came before it: {hindrance}",
  "time-falls": "has at_ms {at}, earlier than {before} before it: put the events in their order, or correct the time",
} as const satisfies Words;

type FitHindranceWords = { readonly [Code in Hindrance as `fit/${Code}`]: string };

/** Why an act on the parts cannot be done, by codes that no other hindrance has. */
const FIT_HINDRANCE_WORDS = Object.fromEntries(
  Object.entries(FIT_WORDS).map(([code, words]) => [`fit/${code}`, words]),
) as FitHindranceWords;

/** Everything that can be wrong with a handover and its record. */
export const RUN_WORDS = {
  ...LOCK_WORDS,
  ...HINDRANCE_WORDS,
  ...FIT_HINDRANCE_WORDS,
  ...MISFIT_WORDS,
  "scene-not-drawn": "is {said}, but seed {seed} draws {drawn}: this handover was not begun with its seed",
  "tray-not-drawn": "is not what seed {seed} draws: this handover was not begun with its seed",
  "own-door":
    "The door is not the one that seed {seed} draws. A person or an earlier version wrote this handover: nothing shows that its door was not chosen.",
  "event-misfit": ": step {step} (events[{index}]), {type}, {misfit}",
  "back-misfit": ": events[{index}], run.wentBack, {misfit}",
  "cannot-happen": ": {type} cannot have happened. {hindrance}",
  "no-such-step": ": the handover cannot go back to step {steps}: it has {count:step that counts|steps that count}",
  "no-defect-fits": ": none of the defects asked for fits {lock}; choose another",
} as const satisfies Words;

/** Problems of handovers. */
export const runProblem = problemsOf(RUN_WORDS);

/** A code of a hindrance that needs no values. */
export type HindranceCode = Exclude<keyof typeof HINDRANCE_WORDS, "bolt-part-back">;

/** A code of a misfit that needs no values. */
export type MisfitCode = Exclude<
  keyof typeof MISFIT_WORDS,
  "height-differs" | "parts-not-drawn" | "back-too-far" | "hindered" | "time-falls" | "fit-act-hindered" | "fit-differs"
>;
