import { drillProblem } from "../drillWords";
import { SheetError } from "../sheetError";
import type { Sheet, Station } from "./sheet";

/** A sheet being edited, with what it was before and what was undone. */
export interface Editing {
  readonly sheet: Sheet;
  /** Oldest first. */
  readonly past: readonly Sheet[];
  /** Next to redo first. */
  readonly future: readonly Sheet[];
}

/** One change to a sheet. An edited sheet need not be sound at every moment: `parseSheet` tells. */
export type Edit =
  | { readonly type: "add"; readonly station: Station; readonly at: number }
  | { readonly type: "remove"; readonly at: number }
  | { readonly type: "move"; readonly from: number; readonly to: number }
  | { readonly type: "change"; readonly at: number; readonly station: Station }
  | { readonly type: "describe"; readonly fields: Partial<Omit<Sheet, "format" | "version" | "stations">> };

/** Steps that can be undone; older ones are forgotten. */
export const MOST_STEPS = 200;

/** Begins editing; there is nothing to undo yet. */
export function beginEditing(sheet: Sheet): Editing {
  return { sheet, past: [], future: [] };
}

const checkPlace = (place: number, count: number): void => {
  if (Number.isInteger(place) && place >= 0 && place < count) return;
  throw new SheetError(drillProblem("no-place", [], { place, count }));
};

function moved(stations: readonly Station[], from: number, to: number): readonly Station[] {
  checkPlace(from, stations.length);
  checkPlace(to, stations.length);
  const without = stations.toSpliced(from, 1);
  return without.toSpliced(to, 0, ...stations.slice(from, from + 1));
}

function stationsAfter(stations: readonly Station[], edit: Exclude<Edit, { type: "describe" }>): readonly Station[] {
  switch (edit.type) {
    case "add":
      checkPlace(edit.at, stations.length + 1);
      return stations.toSpliced(edit.at, 0, edit.station);
    case "remove":
      checkPlace(edit.at, stations.length);
      return stations.toSpliced(edit.at, 1);
    case "move":
      return moved(stations, edit.from, edit.to);
    case "change":
      checkPlace(edit.at, stations.length);
      return stations.with(edit.at, edit.station);
  }
}

const sheetAfter = (sheet: Sheet, edit: Edit): Sheet =>
  edit.type === "describe" ? { ...sheet, ...edit.fields } : { ...sheet, stations: stationsAfter(sheet.stations, edit) };

/**
 * Makes a change. What had been undone can no longer be redone.
 *
 * @throws {SheetError} for a place that is none
 */
export function edited({ sheet, past }: Editing, edit: Edit): Editing {
  return { sheet: sheetAfter(sheet, edit), past: [...past, sheet].slice(-MOST_STEPS), future: [] };
}

/** Takes back the last change; nothing happens where there is none. */
export function undone(editing: Editing): Editing {
  const before = editing.past.at(-1);
  if (before === undefined) return editing;
  return { sheet: before, past: editing.past.slice(0, -1), future: [editing.sheet, ...editing.future] };
}

/** Makes the change again that was taken back last; nothing happens where there is none. */
export function redone(editing: Editing): Editing {
  const [after, ...future] = editing.future;
  return after === undefined ? editing : { sheet: after, past: [...editing.past, editing.sheet], future };
}

/** A name for a new station that no other has: "station 1", "station 2" and so on. */
export function freeStationId({ stations }: Pick<Sheet, "stations">): string {
  const taken = new Set(stations.map(({ id }) => id));
  let number = stations.length + 1;
  while (taken.has(`station ${number}`)) number += 1;
  return `station ${number}`;
}
