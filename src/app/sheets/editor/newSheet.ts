import type { DialingStation, Sheet, Station } from "../../../drill/sheet/sheet";
import { freeStationId } from "../../../drill/sheet/sheetEditing";

/** What every station begins with. */
const begun = (repetitions: number) => ({ help: "full", repetitions, passMarks: {} }) as const;

const DRAWN = { profile: "three-wheel", combinations: { policy: "drawn" } } as const;

const newDialing = (id: string): DialingStation => ({ kind: "dialing", id, ...DRAWN, ...begun(10) });

type New = { readonly [Kind in Station["kind"]]: (id: string) => Station & { readonly kind: Kind } };

const NEW: New = {
  dialing: newDialing,
  zeroing: (id) => ({ kind: "zeroing", id, profile: "dial-encoder", ...begun(2) }),
  change: (id) => ({ kind: "change", id, ...DRAWN, ...begun(2) }),
  trouble: (id) => ({ kind: "trouble", id, profile: "three-wheel", ...begun(3) }),
  handover: (id) => ({ kind: "handover", id, profile: "three-wheel", hand: "real", ...begun(1) }),
  service: (id) => ({ kind: "service", id, profile: "three-wheel", ...begun(1) }),
  fitting: (id) => ({ kind: "fitting", id, profile: "three-wheel", ...begun(1) }),
  inspection: (id) => ({ kind: "inspection", id, profile: "three-wheel", ...begun(2) }),
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
