import type { DialingStation, Sheet, Station } from "../../../drill/sheet/sheet";
import { freeStationId } from "../../../drill/sheet/sheetEditing";

const newDialing = (id: string): DialingStation => ({
  kind: "dialing",
  id,
  profile: "three-wheel",
  combinations: { policy: "drawn" },
  help: "full",
  repetitions: 10,
  passMarks: {},
});

type New = { readonly [Kind in Station["kind"]]: (id: string) => Station & { readonly kind: Kind } };

const NEW: New = {
  dialing: newDialing,
  zeroing: (id) => ({ kind: "zeroing", id, profile: "dial-encoder", help: "full", repetitions: 2, passMarks: {} }),
  change: (id) => ({
    kind: "change",
    id,
    profile: "three-wheel",
    combinations: { policy: "drawn" },
    help: "full",
    repetitions: 2,
    passMarks: {},
  }),
  trouble: (id) => ({ kind: "trouble", id, profile: "three-wheel", help: "full", repetitions: 3, passMarks: {} }),
  handover: (id) => ({
    kind: "handover",
    id,
    profile: "three-wheel",
    hand: "real",
    help: "full",
    repetitions: 1,
    passMarks: {},
  }),
};

/** A station to begin with, under a name that the sheet has not taken. */
export function newStation<Kind extends Station["kind"]>(
  kind: Kind,
  sheet: Pick<Sheet, "stations">,
): Station & { readonly kind: Kind } {
  return NEW[kind](freeStationId(sheet));
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
    purpose: "What this sheet teaches.",
    stations: [newDialing("station 1")],
    order: "blocked",
  };
}

const LONGEST_TITLE = 120;

/** The same sheet under another title. */
export function copiedSheet(sheet: Sheet): Sheet {
  return { ...sheet, title: `Copy of ${sheet.title}`.slice(0, LONGEST_TITLE) };
}
