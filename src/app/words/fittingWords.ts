import * as draw from "./drawings/fit";
import { Clearance, SplineKey } from "./drawings/work";
import type { WordGroup } from "./word";

/** Putting a lock together on its door. */
export const FITTING_WORDS: WordGroup = {
  id: "fitting",
  title: "Fitting",
  words: [
    {
      id: "written-instructions",
      term: "Written instructions",
      text: "The paper that comes with the lock. It is the final authority on how that lock is fitted, set, changed and serviced; local code decides about the door.",
    },
    {
      id: "clearance",
      term: "Gap, clearance",
      text: "The space between dial and ring. Too little and the dial rubs, too much and you misread the index.",
      picture: Clearance,
    },
    {
      id: "rub",
      term: "Rub",
      text: "The dial touches the ring and scrapes: the gap is too small, or the ring sits to one side. Turn the dial all the way round and feel for it.",
    },
    {
      id: "lead",
      term: "Thread and lead",
      text: "The lead is how far one turn of the dial moves it in or out: 0.635 mm on a spindle with 40 threads to the inch. Gap and keyway both have to fit at the same place.",
      picture: draw.Lead,
    },
    {
      id: "spline-key",
      term: "Key and keyway",
      text: "The spline key lies in a groove of the cam and one of the spindle, the keyways, and holds them together. The cam has several: the wrong one shifts every number by a part of a turn.",
      picture: SplineKey,
    },
    {
      id: "key-seat",
      term: "Key seat",
      text: "The bottom of the keyway. A key that is not driven home stands out and rides on the lever once in every turn. If its screw is loose, the seat wears and lost motion grows.",
      picture: draw.KeySeat,
    },
    {
      id: "torque",
      term: "Torque",
      text: "How hard a screw is turned, in newton meters (Nm). Too little and it works loose, too much and its thread strips: use the figure in the instructions.",
    },
    {
      id: "thread-locker",
      term: "Thread locker",
      text: "A liquid that sets in a thread and keeps a screw from working loose. One drop goes on the screw of the key. On the spindle or near the wheels it spoils the lock.",
    },
    {
      id: "washers",
      term: "Washers and spring",
      text: "They fill the room behind the cam and press it lightly. Their number sets end play and drag; a spring with its edge on the cam scrapes, so their order counts too.",
      picture: draw.Washers,
    },
    {
      id: "end-play",
      term: "End play",
      text: "How far the dial moves in and out when you push and pull it, in millimeters. Washers take it away; too many of them make the dial heavy.",
      picture: draw.EndPlay,
    },
    {
      id: "ring-off-center",
      term: "Ring off center",
      text: "A ring that sits to one side of the spindle. You read too much at one place and too little across from it. Setting zero compensates for one index; any other index of that ring stays wrong.",
      picture: draw.OffCenter,
    },
    {
      id: "bushing",
      term: "Bushing",
      text: "A sleeve that slides on the spindle and centers the ring while you tighten it.",
    },
    {
      id: "parallax",
      term: "Parallax",
      text: "Dial and ring do not lie in one plane. An eye off the axis sees the mark shifted, by the gap times the tangent of the angle. Look straight at the index.",
      picture: draw.Parallax,
    },
    {
      id: "alignment",
      term: "Cam and ring alignment",
      text: "With the dial at zero, the gate of the cam is where the instructions say. The ring sits centered, so that the dial turns free and its index is in its place.",
    },
    {
      id: "fire-door",
      term: "Fire-rated door",
      text: "A door with a fire label. Do not drill or cut it on site beyond what its listing allows: ask whoever has authority first.",
    },
  ],
};

/** Looking after a lock that is in use. */
export const SERVICE_WORDS: WordGroup = {
  id: "service",
  title: "Service",
  words: [
    {
      id: "service-visit",
      term: "Service visit",
      text: "A visit to a lock that is in use: ask, read its papers, look and measure, change only what is outside its limits, prove the lock, write the record.",
    },
    {
      id: "service",
      term: "Service and lubricant",
      text: "The instructions say how often a lock is serviced and what may be lubricated, and with what. The wrong lubricant gathers dirt and stops wheels and flies from moving freely.",
    },
    {
      id: "batteries",
      term: "Batteries and static",
      text: "Change batteries at the first sign that they are low, all at once, to the type in the instructions. Wear the wrist strap, grounded, before you take a cover off or touch a circuit board.",
    },
    {
      id: "out-of-service",
      term: "Taking out of service",
      text: "Set a lock that leaves service back to its shipped combination or as the site asks, and write down when and by whom.",
    },
  ],
};
