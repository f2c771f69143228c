import * as draw from "./drawings/work";
import type { WordGroup } from "./word";

/** Changing a combination, proving it, and handing the door over. */
export const DOOR_WORDS: WordGroup = {
  id: "door",
  title: "Changing and handing over",
  words: [
    {
      id: "change-key",
      term: "Change key",
      text: "The tool that loosens the gates of all wheels at once. Insert it only with every wheel lined up, and never force it.",
      picture: draw.ChangeKey,
    },
    {
      id: "choosing-numbers",
      term: "Choosing numbers",
      text: "Rules say which numbers a combination may have: not too close, not in order, nothing that others can guess. The holder chooses it, not the installer.",
    },
    {
      id: "proof",
      term: "Proof",
      text: "Opening the lock several times in a row with the new combination, the door open. One miss and the count starts again.",
      picture: draw.Proof,
    },
    {
      id: "handover",
      term: "Handover",
      text: "Everything from a fresh lock to the holder’s signature: zero, combination, proofs, inside release and record.",
    },
    {
      id: "holder",
      term: "Holder",
      text: "The person who is to use the door. The holder opens it alone before signing.",
    },
    {
      id: "holdback",
      term: "Holdback",
      text: "A device that keeps the bolt back while people come and go. A door held back is not locked, whatever the dial shows.",
      picture: draw.Holdback,
    },
    {
      id: "egress",
      term: "Egress",
      text: "The way out. From inside, an exit door opens with one motion, without a key, special knowledge or effort. Your local code decides.",
      picture: draw.Egress,
    },
    {
      id: "record",
      term: "Record",
      text: "The page that says who did what, when, and how it was proved. The combination is never in it.",
      picture: draw.Record,
    },
    {
      id: "defect",
      term: "Defect",
      text: "What is wrong with a lock on the trouble bench: a slipped index, a worn gate, a zero that was never set. Measure before you name it.",
    },
  ],
};

/** How practice works here. */
export const PRACTICE_WORDS: WordGroup = {
  id: "practice",
  title: "Practice in Gatefall",
  words: [
    {
      id: "help",
      term: "Full, Counts, Silent",
      text: "How much help you get. Full says what to do and how far off you are, Counts counts arrivals only, Silent shows nothing until the end.",
    },
    {
      id: "cutaway",
      term: "Cutaway",
      text: "A picture of the wheels behind the dial. Watch it to see what a turn does; a real lock never shows it.",
    },
    {
      id: "turn-chart",
      term: "Turn chart",
      text: "Your turning drawn as a line: the dial reading goes across, the turns go down, with a mark at every arrival and stop.",
    },
    {
      id: "real-dial",
      term: "Real dial",
      text: "A dial that your hand turns in place of the mouse: a printed dial or the dial of a practice lock before a camera, an encoder, or a phone on the knob.",
      place: { href: "#/dial?back=%23%2Fwords", title: "Set up a real dial" },
    },
    {
      id: "coarse-source",
      term: "Coarse source",
      text: "A knob whose steps are half a graduation or more. It is good for practicing count and order. Its stops are not judged.",
    },
    {
      id: "turns-in-doubt",
      term: "Turns in doubt",
      text: "A camera lost sight of the dial, or a device stopped sending, so a turn may be counted wrong. The record says so.",
    },
    {
      id: "drill-sheet",
      term: "Drill sheet",
      text: "What an instructor sets: stations with locks, tries, help and pass marks. Every lesson of the course is a drill sheet.",
    },
    {
      id: "condition",
      term: "Condition",
      text: "Something that a sheet sets to make a try harder, such as a heavy dial or an index that is off.",
    },
    {
      id: "sitting",
      term: "Sitting",
      text: "Working through a drill sheet by the clock, with a result at the end. It is practice, not a certificate.",
    },
    {
      id: "verdict",
      term: "Verdict: passed, failed, not shown",
      text: "Not shown means that your tries were too few to tell. More tries may settle it.",
      picture: draw.NotShown,
    },
    {
      id: "first-time-opening",
      term: "First-time opening",
      text: "A try in which the lock opened on the first attempt. Their share is what most pass marks ask for.",
    },
  ],
};
