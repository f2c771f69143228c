import { useState } from "react";
import { baseSheetSvg, discSheetSvg, type Paper } from "../../../../../realdial/sheet/sheetSvg";
import { Button } from "../../../../parts/controls/Button";
import { type Choices, Select } from "../../../../parts/controls/Select";
import { saveFile } from "../../../../parts/files/saveFile";
import type { DeviceNeedsProps } from "../dialDevice";

const PAPER_CHOICES: Choices<Paper> = [
  ["a4", "A4"],
  ["letter", "Letter"],
];

const save = (name: string, text: string) => saveFile({ name: `${name}.svg`, type: "image/svg+xml", text });

/** The two sheets of a printed dial, to be saved and printed, and how they become a dial. */
export function PrintSheets({ perTurn }: DeviceNeedsProps) {
  const [paper, setPaper] = useState<Paper>("a4");
  const graduations = perTurn === 60 ? 60 : 100;
  return (
    <details className="mt-2">
      <summary className="py-1 phone:py-3">Print the dial and build it</summary>
      <ol className="pl-5">
        <li>Save both sheets and print them at 100 %. Measure the check line: it must be 100 mm long.</li>
        <li>Lay the base sheet flat and tape it to the table. Its four square marks must stay in sight.</li>
        <li>
          Cut out the disc and stick it on a jar lid or a card that turns on a pin at the cross. Glue a knob inside the
          dashed circle.
        </li>
        <li>
          Put the disc on the circle of the base sheet. Fix the camera above it, on a stand or a pile of books, so that
          it sees the whole sheet.
        </li>
      </ol>
      <div className="row mt-2">
        <label className="row gap-2">
          Paper
          <Select value={paper} choices={PAPER_CHOICES} onChoice={setPaper} />
        </label>
        <Button onClick={() => save(`dial-base-sheet-${paper}`, baseSheetSvg(paper))}>Save the base sheet</Button>
        <Button
          onClick={() =>
            save(`dial-disc-${graduations}-${paper}`, discSheetSvg(paper, { graduations, numbers: "clockwise" }))
          }
        >
          Save the disc with {graduations} graduations
        </Button>
      </div>
    </details>
  );
}
