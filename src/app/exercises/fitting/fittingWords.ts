import type { FitCheck } from "../../../fitting/fitCheck";
import type { FitFault } from "../../../fitting/fitFault";
import type { Hindrance } from "../../../fitting/fittingAct";
import type { FitStage } from "../../../fitting/fittingMachine";

export const CAUTIONS = [
  "Work with the door open and held. Never shut a door on a lock that is not proved.",
  "Filing and sawing throw sharp chips. Wear eye protection, and do not drill or grind near people.",
  "Before you take the cover off an electronic lock, wear the wrist strap: static can destroy it.",
  "The maker's written instructions decide sizes, torque and where thread locker goes. Local codes and your license decide what you may do.",
];

/** How far the lock is together. */
export const STAGE_WORDS: Readonly<Record<FitStage, string>> = {
  apart: "Parts are still in the tray.",
  coupled: "Dial and cam are coupled. The cover is off.",
  closed: "The lock is together and the cover is on.",
  spent: "These parts cannot become a good lock any more. Read the debrief, then start again.",
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
  "too-short-to-cut": "Enter a length above 0 and below the spindle's own.",
  "not-sawn": "There is no sawn end to file.",
  "no-spare": "There is no spindle left in the tray.",
  "glued-in": "The thread locker on the spindle has set. The dial does not turn in the cam any more.",
  "keyways-apart": "No keyway lines up with the spindle's slot. Turn the dial until one does.",
  "washers-too-thick": "These washers are thicker than the room between cam and seat.",
  "cover-touches-spindle": "The cover touches the spindle: it is too long.",
};

export const CHECK_LABELS: Readonly<Record<FitCheck, string>> = {
  depth: "Depth gauge on the cam",
  feelers: "Feeler gauge round the dial",
  "turn-round": "Turn it all round",
  "push-pull": "Push and pull",
  rim: "Watch the slit at the rim",
  key: "Look at the key",
  zero: "Read the dial, gate under the nose",
  marks: "Read at four marks of the ring",
  wheels: "Turn the wheels",
  screws: "Try every screw",
  bolt: "Work the bolt in the strike",
};

interface FaultWords {
  readonly what: string;
  readonly does: string;
  readonly fix: string;
}

/** What is wrong, what it does to the lock, and what to do. */
export const FAULT_WORDS: Readonly<Record<FitFault, FaultWords>> = {
  "ring-off-center": {
    what: "The ring is off center.",
    does: "Each index reads wrong by its own amount. Zero compensates for that at the opening index only: the changing index stays wrong.",
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
    fix: "Widen the gap by whole turns, center the ring, or take out the end play.",
  },
  "gap-wide": {
    what: "The gap between dial and ring is too wide.",
    does: "An eye off the axis reads wrong: the wider the gap, the more.",
    fix: "Remove the key and screw the dial in by whole turns.",
  },
  "wrong-keyway": {
    what: "The key is in the wrong keyway.",
    does: "Every number is off by a part of a turn.",
    fix: "Remove the key and turn the dial to the keyway in which it reads 0 with the gate under the nose.",
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
    fix: "Replace the spindle. Tighten the next one firmly, not hard.",
  },
  "key-screw-unsecured": {
    what: "There is no thread locker on the key's screw.",
    does: "It works loose with use.",
    fix: "Put one drop on the key's screw.",
  },
  "end-play": {
    what: "The dial has end play.",
    does: "You can push it onto the ring, and the reading changes as it tilts.",
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
    fix: "Take the dial out and take the spare spindle.",
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
};
