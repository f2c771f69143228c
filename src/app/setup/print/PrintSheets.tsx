import { useState } from "react";
import { baseSheetSvg, type DiscFace, discSheetSvg, type Paper } from "../../../realdial/sheet/sheetSvg";
import { Button } from "../../parts/controls/Button";
import { type Choices, Select } from "../../parts/controls/Select";
import { saveFile } from "../../parts/files/saveFile";

const PAPER_CHOICES: Choices<Paper> = [
  ["a4", "A4"],
  ["letter", "Letter"],
];
const GRADUATION_CHOICES: Choices<"100" | "60"> = [
  ["100", "100"],
  ["60", "60"],
];
const NUMBER_CHOICES: Choices<DiscFace["numbers"]> = [
  ["clockwise", "Clockwise"],
  ["counterclockwise", "Counter-clockwise"],
];

const save = (name: string, text: string) => saveFile({ name: `${name}.svg`, type: "image/svg+xml", text });

/** The two sheets of a printed dial, to be saved and printed by their real size. */
export function PrintSheets({ perTurn }: { readonly perTurn: 100 | 60 }) {
  const [paper, setPaper] = useState<Paper>("a4");
  const [graduations, setGraduations] = useState<"100" | "60">(perTurn === 60 ? "60" : "100");
  const [numbers, setNumbers] = useState<DiscFace["numbers"]>("clockwise");
  const saveDisc = () => {
    const face: DiscFace = { graduations: graduations === "60" ? 60 : 100, numbers };
    save(`dial-disc-${graduations}-${numbers}-${paper}`, discSheetSvg(paper, face));
  };
  return (
    <div className="stack print:hidden">
      <div className="row">
        <label className="row gap-2">
          Paper
          <Select value={paper} choices={PAPER_CHOICES} onChoice={setPaper} />
        </label>
        <label className="row gap-2">
          Graduations
          <Select value={graduations} choices={GRADUATION_CHOICES} onChoice={setGraduations} />
        </label>
        <label className="row gap-2">
          Numbers grow
          <Select value={numbers} choices={NUMBER_CHOICES} onChoice={setNumbers} />
        </label>
      </div>
      {numbers === "counterclockwise" && (
        <p className="text-soft">
          Most dials have clockwise numbers. With these, change the direction in the setup: turning left counts down.
        </p>
      )}
      <div className="row">
        <Button className="primary" onClick={() => save(`dial-base-sheet-${paper}`, baseSheetSvg(paper))}>
          Save the base sheet
        </Button>
        <Button className="primary" onClick={saveDisc}>
          Save the disc
        </Button>
      </div>
    </div>
  );
}
