import { ADMISSIONS, type Admission } from "../../../drill/sheet/admission";
import { LOST_SIGHT_RULES } from "../../../drill/sheet/lostSightRule";
import type { DialingStation, ZeroingStation } from "../../../drill/sheet/sheet";
import { LOST_SIGHT_NOTES, LOST_SIGHT_WORDS } from "../../results/doubtWords";
import { ADMISSION_WORDS } from "../../results/sourceWords";
import { ChoiceField } from "./fields";
import type { StationEdit } from "./stationEdit";

const TURNED_BY = ADMISSIONS.map((one) => [one, ADMISSION_WORDS[one]] as const);

const LOST_SIGHT = LOST_SIGHT_RULES.map((one) => [one, LOST_SIGHT_WORDS[one]] as const);

/** What each choice means, for whoever sets it. */
const TURNED_BY_NOTES: Readonly<Record<Admission, string>> = {
  any: "The screen, or any dial or knob that is set up. A coarse one does not count where stops are marked to a fraction.",
  screen: "The dial on the screen: pointer, keys, wheel or buttons.",
  "real-dial":
    "A printed or ordinary dial before a camera, an encoder, or a phone on the knob. Trainees set it up before they begin.",
  "not-coarse": "All but knobs whose steps are half a graduation or more.",
};

/** What may turn the dial of a station that has nothing else, and what comes of a device that loses the hand. */
export function SourceFields({ station, path, onFields }: StationEdit<DialingStation | ZeroingStation>) {
  const { turnedBy = "any", lostSight = "counts" } = station;
  return (
    <>
      <ChoiceField
        label="What may turn the dial"
        path={`${path}.turnedBy`}
        value={turnedBy}
        choices={TURNED_BY}
        note={TURNED_BY_NOTES[turnedBy]}
        onChoice={(one) => onFields({ turnedBy: one === "any" ? undefined : one }, "turnedBy")}
      />
      {turnedBy !== "screen" && (
        <ChoiceField
          label="If a device loses the hand"
          path={`${path}.lostSight`}
          value={lostSight}
          choices={LOST_SIGHT}
          note={LOST_SIGHT_NOTES[lostSight]}
          onChoice={(one) => onFields({ lostSight: one === "counts" ? undefined : one }, "lostSight")}
        />
      )}
    </>
  );
}
