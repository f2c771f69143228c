import type { DialingStation, Sheet, Station } from "../../../drill/sheet/sheet";
import { freeStationId } from "../../../drill/sheet/sheetEditing";

/** What every station begins with. */
const begun = (title: string, repetitions: number) => ({ title, help: "full", repetitions, passMarks: {} }) as const;

const DRAWN = { profile: "three-wheel", combinations: { policy: "drawn" } } as const;

const newDialing = (id: string): DialingStation => ({
  kind: "dialing",
  id,
  ...DRAWN,
  ...begun("Dial the combination", 10),
});

type New = { readonly [Kind in Station["kind"]]: (id: string) => Station & { readonly kind: Kind } };

const NEW: New = {
  dialing: newDialing,
  zeroing: (id) => ({ kind: "zeroing", id, profile: "dial-encoder", ...begun("Set the zero", 2) }),
  change: (id) => ({ kind: "change", id, ...DRAWN, ...begun("Change the combination", 2) }),
  trouble: (id) => ({ kind: "trouble", id, profile: "three-wheel", ...begun("Find the defect", 3) }),
  handover: (id) => ({ kind: "handover", id, profile: "three-wheel", hand: "real", ...begun("Hand over the door", 1) }),
  service: (id) => ({ kind: "service", id, profile: "three-wheel", ...begun("Service visit", 1) }),
  fitting: (id) => ({ kind: "fitting", id, profile: "three-wheel", ...begun("Fit the dial", 1) }),
  inspection: (id) => ({ kind: "inspection", id, profile: "three-wheel", ...begun("Find what is wrong", 2) }),
};

/** A title that no other station of the sheet has: "Fit the dial", "Fit the dial 2" and so on. */
function freeTitle(title: string, { stations }: Pick<Sheet, "stations">): string {
  const taken = new Set(stations.map((one) => one.title));
  const named = (number: number) => (number === 1 ? title : `${title} ${number}`);
  let number = 1;
  while (taken.has(named(number))) number += 1;
  return named(number);
}

/** A station to begin with, titled by its job, under a name and a title that the sheet has not taken. */
export function newStation<Kind extends Station["kind"]>(
  kind: Kind,
  sheet: Pick<Sheet, "stations">,
): Station & { readonly kind: Kind } {
  const station = NEW[kind](freeStationId(sheet));
  return { ...station, title: freeTitle(station.title ?? "", sheet) };
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
