import type { LubricatedPlace } from "../../../service/servicedLock";
import type { VisitAct } from "../../../service/visitAct";
import { INSTRUMENT_WORDS, LOOK_WORDS, QUESTION_WORDS, SECTION_TITLES } from "../../../service/visitNames";

export const PLACE_WORDS: Readonly<Record<LubricatedPlace, string>> = {
  bearing: "spindle's bearing",
  wheels: "wheels",
  bolt: "bolt",
};

type Detailed =
  | "asked"
  | "section.read"
  | "looked"
  | "measured"
  | "screw.tightened"
  | "lubricated"
  | "batteries.replaced";

/** Acts that are always the same. */
const PLAIN: Readonly<Record<Exclude<VisitAct["type"], Detailed>, string>> = {
  "key.replaced": "Replace the key",
  "bearing.replaced": "Replace the spindle's bearing",
  "ring.cleaned": "Wipe the ring dry",
  "paint.removed": "Remove paint",
  "bolt.wiped": "Wipe the bolt dry",
  "ring.centered": "Center the ring over the bushing",
  "record.read": "Read: Last service record",
  "door.opened": "Have the door opened",
  "door.held": "Hold the door open",
  "door.shut": "Shut the door",
  "strap.worn": "Wear the wrist strap",
  "cover.taken": "Take the cover off",
  "cover.put": "Put the cover on",
  tried: "Dial the combination",
  "record.written": "Write the record",
};

/** What is done, as its button says it. */
export function actLabel(act: VisitAct): string {
  switch (act.type) {
    case "asked":
      return QUESTION_WORDS[act.question];
    case "section.read":
      return `Read: ${SECTION_TITLES[act.section]}`;
    case "looked":
      return LOOK_WORDS[act.at];
    case "measured":
      return INSTRUMENT_WORDS[act.with];
    case "screw.tightened":
      return `Tighten to ${act.torque_Nm.toFixed(1)} Nm`;
    case "lubricated":
      return `Lubricate the ${PLACE_WORDS[act.at]} with ${act.with}`;
    case "batteries.replaced":
      return `Replace ${act.which === "set" ? "all four cells" : "one cell"}, new type: ${act.cells}`;
    default:
      return PLAIN[act.type];
  }
}
