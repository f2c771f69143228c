import type { Assembly } from "./assembly";
import type { FitCheck } from "./fitCheck";
import type { FitFault } from "./fitFaultCode";
import type { Hindrance } from "./fittingAct";
import { FOUND_BY } from "./foundBy";

/** A check as one does it. */
const CHECK_LABELS: Readonly<Record<FitCheck, string>> = {
  depth: "Depth gauge on the cam",
  feelers: "Feeler gauge round the dial",
  "turn-round": "Turn it all round",
  "push-pull": "Push and pull",
  rim: "Watch the slit at the rim",
  key: "Look at the key",
  nose: "Turn the gate away: is the nose clear?",
  zero: "Read the dial, gate under the nose",
  side: "Look at the index from the side",
  marks: "Read at four marks of the ring",
  wheels: "Turn the wheels",
  screws: "Try every screw",
  bolt: "Work the bolt in the strike",
  cover: "Look at the cover",
  wires: "Look at the wires and the fuse",
  "self-check": "Run the self-check",
};

/** An electronic lock has no gate to bring under a nose, or away from it. */
const ELECTRONIC_LABELS: { readonly [Check in FitCheck]?: string } = {
  nose: "Turn the mark away: is the lever clear?",
  zero: "Read the dial, cam at its mark",
};

/** The same on the lock in hand. */
export const checkLabel = (check: FitCheck, { board }: Pick<Assembly, "board">): string =>
  (board === null ? undefined : ELECTRONIC_LABELS[check]) ?? CHECK_LABELS[check];

/** Checks in a line. */
export const checksText = (checks: readonly FitCheck[], lock: Pick<Assembly, "board">): string =>
  checks.map((check) => checkLabel(check, lock).toLowerCase()).join("; ");

/** The checks that tell a fault of a lock, in a line: an electronic one has no wheels to turn. */
export const foundByText = (fault: FitFault, lock: Pick<Assembly, "board">): string =>
  checksText(
    FOUND_BY[fault].filter((check) => check !== "wheels" || lock.board === null),
    lock,
  );

interface FaultWords {
  readonly what: string;
  readonly does: string;
  readonly fix: string;
}

/** What is wrong, what it does to the lock, and what to do. */
export const FAULT_WORDS: Readonly<Record<FitFault, FaultWords>> = {
  "ring-off-center": {
    what: "The ring is off center.",
    does: "Each index reads wrong by its own amount. Zero compensates for that at the opening index only: a changing index, where there is one, stays wrong.",
    fix: "Take the dial out, loosen the ring, take it off, and put it on over the bushing.",
  },
  "ring-loose": {
    what: "The ring is loose.",
    does: "It turns on the door, and every reading turns with it.",
    fix: "Take the dial out and tighten the ring.",
  },
  rubs: {
    what: "The dial rubs on the ring.",
    does: "It is heavy where it rubs, so the hand stops late there.",
    fix: "Widen the gap by whole turns, center the ring, take out the end play, or replace a bent spindle.",
  },
  "gap-wide": {
    what: "The gap between dial and ring is too wide.",
    does: "An eye off the axis reads wrong: the wider the gap, the more.",
    fix: "Remove the key and screw the dial in by whole turns.",
  },
  "wrong-keyway": {
    what: "The key is in the wrong keyway.",
    does: "Every number is off by a part of a turn.",
    fix: "Remove the key and turn the dial to the keyway in which it reads 0 with the cam at zero.",
  },
  "key-not-seated": {
    what: "The key is not driven home.",
    does: "It rides on the lever once a turn: the dial is heavy there, and there is more lost motion.",
    fix: "Drive the key home.",
  },
  "key-screw-loose": {
    what: "The key's screw is loose.",
    does: "The key works itself a wider seat: lost motion grows with use.",
    fix: "Tighten the screw until it is firm.",
  },
  "key-screw-stripped": {
    what: "The thread of the key's screw is stripped.",
    does: "Nothing holds the key. It falls out or turns in the cam.",
    fix: "Replace the spindle, and turn the key's screw firmly, not hard.",
  },
  "key-screw-unsecured": {
    what: "There is no thread locker on the key's screw.",
    does: "It works loose with use.",
    fix: "Put one drop of thread locker on the key's screw.",
  },
  "end-play": {
    what: "The dial has end play.",
    does: "You can push it toward the ring, and the reading changes as it tilts.",
    fix: "Take the lock body off and add washers.",
  },
  "dial-heavy": {
    what: "The washers make the dial heavy.",
    does: "The hand gets ahead of the dial and stops late.",
    fix: "Put the flat washers next to the cam and the spring last, or take one spring out.",
  },
  "spindle-short": {
    what: "The spindle is too short.",
    does: "The key has no hold in it.",
    fix: "Replace the spindle, and cut the next one to the mark at the cam's face.",
  },
  "spindle-long": {
    what: "The spindle is too long.",
    does: "It touches the cover.",
    fix: "Take the dial out, cut the spindle to the mark at the cam's face, and file its end.",
  },
  "spindle-bent": {
    what: "The spindle is bent.",
    does: "The dial runs out: it reads too much on one half of its turn and too little on the other. No zero compensates for that.",
    fix: "Take the dial out and replace the spindle.",
  },
  "locker-astray": {
    what: "Thread locker is where it does not belong.",
    does: "It glues parts that must turn or come apart.",
    fix: "This lock has to be taken apart by a shop. Put a drop on the key's screw and nowhere else.",
  },
  "body-by-one-screw": {
    what: "The lock body hangs by one screw.",
    does: "It tilts under the bolt.",
    fix: "Align it, then tighten all screws.",
  },
  "strike-missing": {
    what: "There is no strike.",
    does: "Nothing holds the bolt: the door does not lock.",
    fix: "Hang the strike by one screw, adjust its height, then tighten all screws.",
  },
  "strike-by-one-screw": {
    what: "The strike hangs by one screw.",
    does: "It shifts until the bolt misses it.",
    fix: "Adjust its height, then tighten all screws.",
  },
  "bolt-binds": {
    what: "The bolt binds in the strike.",
    does: "The draw is heavy, and it wears the lock.",
    fix: "Loosen the strike, move it, and tighten it.",
  },
  "cover-off": {
    what: "The cover is off.",
    does: "Dust and fingers get at the cam and the key, and a wire or a sleeve can catch in them.",
    fix: "Put the cover on when everything under it is right.",
  },
  "battery-missing": {
    what: "The battery is not connected.",
    does: "The lock is dead: it takes no number.",
    fix: "Plug in the encoder's cable, then connect the battery.",
  },
  "battery-reversed": {
    what: "The battery's leads are the wrong way round.",
    does: "The fuse blows, and the lock is dead.",
    fix: "Disconnect the battery, replace the fuse, and connect the leads as the mark on the board shows.",
  },
  "fuse-blown": {
    what: "The fuse is blown.",
    does: "No power gets to the board: the lock is dead.",
    fix: "Put the leads right, then replace the fuse.",
  },
  "cable-out": {
    what: "The encoder's cable is not plugged in.",
    does: "The board does not see the dial: the lock takes no number.",
    fix: "Disconnect the battery, plug the cable in, and connect the battery again.",
  },
  "encoder-not-found": {
    what: "The battery was connected before the encoder's cable.",
    does: "The board looks for the dial only when power comes. It found none, and takes no number until it is restarted.",
    fix: "Disconnect the battery and connect it again.",
  },
  "board-harmed": {
    what: "Static has harmed the board.",
    does: "It is dead, or its readings wander while the dial is at rest: no zero holds, and a number dialed right may be refused.",
    fix: "Wear the wrist strap, disconnect battery and cable, and replace the board.",
  },
};

/** Why a part does not go where it should, and what to do. */
export const HINDRANCE_WORDS: Readonly<Record<Hindrance, string>> = {
  "dial-in-the-way": "The dial is in the way. Take it out first.",
  "cover-in-the-way": "The cover is in the way. Take it off first.",
  "body-in-the-way": "The washers go in with the lock body off. Take it off first.",
  "key-holds-dial": "The key holds the dial on the cam. Remove the key first.",
  "on-the-ring": "The dial is on the ring. It does not go in any farther.",
  "no-ring": "There is no ring on the door. Put it on first.",
  "ring-is-tight": "The ring's screws are tight. Loosen them first.",
  "no-body": "There is no lock body on the door. Hang it first.",
  "no-dial": "The dial is in the tray. Screw it in first.",
  "no-key": "There is no key in the cam. Insert it first.",
  "no-strike": "There is no strike on the frame. Hang it first.",
  "strike-is-tight": "The strike's screws are tight. Loosen them first.",
  "no-cover": "The cover is in the tray.",
  "is-there-already": "It is in its place already.",
  "burr-in-the-thread": "The sawn end does not start in the cam's thread. File and chamfer it first.",
  "ends-inside":
    "The spindle ends inside the cam, so there is nothing to mark. Screw the dial farther in, or take the spare spindle.",
  "too-short-to-cut": "Enter a length in mm, above 0 and below the spindle's length.",
  "not-sawn": "There is no sawn end to file.",
  "no-spare": "There is no spindle left in the tray. Work with the one you have.",
  "glued-in": "The thread locker on the spindle has set. The dial does not turn in the cam any more.",
  "keyways-apart": "No keyway lines up with the spindle's slot. Turn the dial until one does.",
  "washers-too-thick": "These washers are thicker than the room between cam and seat. Choose fewer.",
  "no-board": "This lock has no board.",
  "no-cable": "The encoder's cable is not plugged in.",
  "no-battery": "The battery is not connected.",
  "wires-hold-board": "Cable or battery holds the board. Unplug both first.",
  "no-wheels": "This lock has no wheels.",
  "cover-touches-spindle": "The spindle is too long and touches the cover. Cut it first, with the dial out.",
};
