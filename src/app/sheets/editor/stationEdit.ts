import type { Station } from "../../../drill/sheet/sheet";

/** How the fields of one station change it. */
export interface StationEdit<Kind extends Station = Station> {
  readonly station: Kind;
  /** Path of the station in its sheet: `stations[0]`. */
  readonly path: string;
  /** @param field - names what is typed in, so that its letters are undone together */
  readonly onFields: (fields: Partial<Kind>, field: string) => void;
}
