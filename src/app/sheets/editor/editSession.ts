import type { Sheet, Station } from "../../../drill/sheet/sheet";
import { beginEditing, type Edit, type Editing, edited, redone, undone } from "../../../drill/sheet/sheetEditing";
import { stationName } from "../../../drill/sheet/stationName";
import { Store } from "../../parts/page/store";
import { copiedStation, newStation } from "./newSheet";

/** Fields of the sheet itself, without its stations. */
export type SheetFields = Extract<Edit, { type: "describe" }>["fields"];

/** A sheet under the instructor's hands. A store: it changes with every edit. */
export class EditSession extends Store {
  /** What was done last, for a screen reader. */
  said = "";
  private editing: Editing;
  /** Names of stations that outlast every change, their ids among them: a changed station is another object. */
  private readonly keys = new WeakMap<Station, string>();
  private made = 0;
  /** Field that is being typed in: its letters make one step to undo. */
  private typing: string | null = null;
  private readonly onEdit: (sheet: Sheet) => void;

  /** @param onEdit - told the sheet after every change */
  constructor(sheet: Sheet, onEdit: (sheet: Sheet) => void) {
    super();
    this.editing = beginEditing(sheet);
    this.onEdit = onEdit;
  }

  get sheet(): Sheet {
    return this.editing.sheet;
  }

  get canUndo(): boolean {
    return this.editing.past.length > 0;
  }

  get canRedo(): boolean {
    return this.editing.future.length > 0;
  }

  /** Changes fields of the sheet. @param field - names what is typed in, so that its letters are undone together */
  describe(fields: SheetFields, field: string): void {
    this.make({ type: "describe", fields }, field, "");
  }

  /** What a station is known by while it is edited, whatever its id. */
  keyOf(station: Station): string {
    const key = this.keys.get(station) ?? `station-${++this.made}`;
    this.keys.set(station, key);
    return key;
  }

  /** Changes a station's fields. @param field - as in `describe` */
  changeStation(at: number, fields: object, field: string): void {
    const before = this.sheet.stations[at];
    if (before === undefined) return;
    const station = { ...before, ...fields } as Station;
    const key = this.keyOf(before);
    this.keys.set(station, key);
    this.make({ type: "change", at, station }, `${key}.${field}`, "");
  }

  /** Adds a station at the end. @returns its key */
  add(kind: Station["kind"]): string {
    const station = newStation(kind, this.sheet);
    const at = this.sheet.stations.length;
    this.make({ type: "add", station, at }, null, `Station ${at + 1} is added.`);
    return this.keyOf(station);
  }

  /** Puts a copy after a station. @returns the copy's key */
  copy(at: number): string | null {
    const original = this.sheet.stations[at];
    if (original === undefined) return null;
    const station = copiedStation(original, this.sheet);
    this.make({ type: "add", station, at: at + 1 }, null, `${stationName(original, at)} is copied to place ${at + 2}.`);
    return this.keyOf(station);
  }

  remove(at: number): void {
    const name = this.nameAt(at);
    this.make({ type: "remove", at }, null, `${name} is removed. Undo brings it back.`);
  }

  /** Moves a station; one at the end of the list says so and stays. */
  move(from: number, to: number): void {
    const { length } = this.sheet.stations;
    const name = this.nameAt(from);
    if (to < 0 || to >= length) {
      this.say(`${name} is ${to < 0 ? "first" : "last"} already.`);
    } else if (from !== to) {
      this.make({ type: "move", from, to }, null, `${name} is moved to place ${to + 1} of ${length}.`);
    }
  }

  /** Ends the step that typing makes. */
  endTyping(): void {
    this.typing = null;
  }

  undo(): void {
    this.step(undone(this.editing), this.canUndo ? "Undone." : "There is nothing to undo.");
  }

  redo(): void {
    this.step(redone(this.editing), this.canRedo ? "Done again." : "There is nothing to redo.");
  }

  private nameAt(at: number): string {
    const station = this.sheet.stations[at];
    return station === undefined ? "" : stationName(station, at);
  }

  private make(edit: Edit, field: string | null, said: string): void {
    const isSameField = field !== null && field === this.typing;
    this.typing = field;
    this.step(edited(isSameField ? undone(this.editing) : this.editing, edit), said, field);
  }

  private step(editing: Editing, said: string, typing: string | null = null): void {
    const isChanged = editing !== this.editing;
    this.editing = editing;
    this.typing = typing;
    if (isChanged) this.onEdit(editing.sheet);
    this.say(said);
  }

  private say(words: string): void {
    // A sentence that comes twice is spoken only if it differs: a space is heard by nobody.
    this.said = words !== "" && words === this.said ? `${words} ` : words;
    this.changed();
  }
}
