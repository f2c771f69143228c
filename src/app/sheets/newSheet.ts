import type { DialingStation, Sheet, Station, ZeroingStation } from "../../drill/sheet/sheet";
import { freeStationId } from "../../drill/sheet/sheetEditing";

const newDialing = (id: string): DialingStation => ({
  kind: "dialing",
  id,
  profile: "three-wheel",
  combinations: { policy: "drawn" },
  help: "full",
  repetitions: 10,
  passMarks: {},
});

const newZeroing = (id: string): ZeroingStation => ({
  kind: "zeroing",
  id,
  profile: "dial-encoder",
  help: "full",
  repetitions: 2,
  passMarks: {},
});

/** A station to begin with, under a name that the sheet has not taken. */
export function newStation(kind: Station["kind"], sheet: Pick<Sheet, "stations">): Station {
  const id = freeStationId(sheet);
  return kind === "dialing" ? newDialing(id) : newZeroing(id);
}

/** The same station under a name of its own. */
export function copiedStation(station: Station, sheet: Pick<Sheet, "stations">): Station {
  return { ...station, id: freeStationId(sheet) };
}

/** A sheet to begin with: sound, with one station. */
export function blankSheet(): Sheet {
  return {
    format: "gatefall-sheet",
    version: 1,
    title: "New sheet",
    purpose: "What this sheet is to teach.",
    stations: [newDialing("station 1")],
    order: "blocked",
  };
}

const LONGEST_TITLE = 120;

/** The same sheet under another title. */
export function copiedSheet(sheet: Sheet): Sheet {
  return { ...sheet, title: `Copy of ${sheet.title}`.slice(0, LONGEST_TITLE) };
}
