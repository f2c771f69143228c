import type { HoldbackTask, HoldbackTold } from "../../../../handover/holdback/holdbackMachine";
import { RUN_WORDS } from "../../../../handover/run/rules/runWords";
import { opposite } from "../../../../lock/dial";
import type { Profile } from "../../../../lock/profile";
import { spinOffRule } from "../../../../lock/spinOffRule";
import { countWord } from "../../../../wording/amountWords";

export const CAUTIONS = [
  "A door whose bolt is held back does not lock. Show the holder that, and how to release the holdback.",
  "While the bolt is held back, the wheels are still in line: anyone who releases the holdback has an open lock.",
  "After you release the holdback, throw the bolt, spin off, and try the door.",
];

export const TASK_WORDS: Readonly<Record<HoldbackTask, string>> = {
  set: "Set the holdback",
  held: "Try to spin off",
  pulled: "Shut the door and pull",
  released: "Release the holdback",
  spunOff: "Spin off",
};

/** What came of the last act. */
export const TOLD: Readonly<Record<HoldbackTold, string>> = {
  set: "The holdback is set: the bolt is held back.",
  held: "The dial is blocked. While the bolt is held back, you cannot spin the lock off.",
  pulled: "The door opens when you pull it: a bolt that is held back locks nothing.",
  released: "The holdback is released: the dial moves the bolt again.",
  spunOff: "Spun off: the lock is secured.",
  blocked: "The dial is blocked. Try to turn it a whole turn.",
  "door-opens": "The door opens when you pull it: the bolt is back.",
  "door-stays": "The door stays shut: the bolt is thrown.",
  "bolt-not-back": "The holdback does not move. Turn the dial to the positive stop first, so that the bolt is back.",
  "already-on": RUN_WORDS["holdback-set"],
  "already-off": RUN_WORDS["holdback-released"],
};

const SAY: Readonly<Record<HoldbackTask, (profile: Profile) => string>> = {
  set: () => "The lock is open and the dial is at the positive stop. Set the holdback.",
  held: ({ draw }) => `Now try to spin it off: turn ${opposite(draw.turn)}, a whole turn.`,
  pulled: () => "Shut the door and pull it.",
  released: () => "Release the holdback.",
  spunOff: (profile) => {
    const turns = countWord(spinOffRule(profile).turns);
    return `Spin off: turn ${opposite(profile.draw.turn)}, ${turns} turn${turns === "one" ? "" : "s"} and the way to throw the bolt.`;
  },
};

/** What to do now. @param next - null where everything is done */
export const sayNext = (next: HoldbackTask | null, profile: Profile): string =>
  next === null ? "Done. Held back, the door does not lock. Spun off, it locks." : SAY[next](profile);
