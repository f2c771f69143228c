import { Check } from "../controls/Check";
import { useRemembered } from "../storage/remembered";
import { CSV_MARKS, type CsvMark } from "./csvFile";

/** How CSV files are made, remembered on this device, and the way to choose. */
export const useCsvMark = () => useRemembered("csv", CSV_MARKS);

interface CsvMarkChoiceProps {
  readonly mark: CsvMark;
  readonly onMark: (mark: CsvMark) => void;
}

/** A choice whose need one sees only in a spreadsheet: accents and other letters beyond A to Z. */
export function CsvMarkChoice({ mark, onMark }: CsvMarkChoiceProps) {
  return (
    <Check isOn={mark === "marked"} onSwitch={(isOn) => onMark(isOn ? "marked" : "plain")}>
      <span>
        CSV for a spreadsheet <small>(adds a byte order mark, so that letters such as é come out right)</small>
      </span>
    </Check>
  );
}
