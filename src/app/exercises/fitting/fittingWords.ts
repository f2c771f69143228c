import type { FitStage } from "../../../fitting/fitStage";
import type { Hindrance } from "../../../fitting/fittingAct";

/** How far the lock is together. */
export const STAGE_WORDS: Readonly<Record<FitStage, string>> = {
  apart: "Parts are still in the tray. The checks come once body, ring, dial and key are on the door.",
  coupled: "Dial and cam are coupled. The cover is off.",
  closed: "The lock is together and the cover is on.",
  spent: "These parts cannot become a good lock any more.",
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
  "ends-inside": "The spindle ends inside the cam: nothing of it stands out that could be marked.",
  "too-short-to-cut": "Enter a length above 0 and below the spindle's own.",
  "not-sawn": "There is no sawn end to file.",
  "no-spare": "There is no spindle left in the tray.",
  "glued-in": "The thread locker on the spindle has set. The dial does not turn in the cam any more.",
  "keyways-apart": "No keyway lines up with the spindle's slot. Turn the dial until one does.",
  "washers-too-thick": "These washers are thicker than the room between cam and seat.",
  "no-board": "This lock has no board.",
  "no-cable": "The encoder's cable is not plugged in.",
  "no-battery": "The battery is not connected.",
  "wires-hold-board": "Cable or battery holds the board. Unplug both first.",
  "no-wheels": "This lock has no wheels.",
  "cover-touches-spindle": "The cover touches the spindle: it is too long.",
};
