import { describe, expect, it } from "vitest";
import { EditSession } from "../../../../src/app/sheets/editor/editSession";
import { blankSheet } from "../../../../src/app/sheets/editor/newSheet";
import type { Sheet } from "../../../../src/drill/sheet/sheet";

function begun() {
  const kept: Sheet[] = [];
  return { kept, session: new EditSession(blankSheet(), (sheet) => kept.push(sheet)) };
}

const titles = ({ sheet }: EditSession) => sheet.stations.map(({ id }) => id);

describe("EditSession", () => {
  it("makes one step of the letters typed in a field", () => {
    const { session } = begun();
    for (const title of ["A", "Ab", "Abc"]) session.describe({ title }, "title");
    session.describe({ purpose: "P" }, "purpose");
    session.undo();
    expect(session.sheet.title).toBe("Abc");
    session.undo();
    expect(session.sheet.title).toBe("New sheet");
    expect(session.canUndo).toBe(false);
    session.redo();
    session.redo();
    expect(session.sheet).toMatchObject({ title: "Abc", purpose: "P" });
  });

  it("knows a station by one key through changes of its id, copies, undo and redo", () => {
    const { session } = begun();
    const keys = () => session.sheet.stations.map((station) => session.keyOf(station));
    const [first = ""] = keys();
    for (const id of ["d", "di", "dial"]) session.changeStation(0, { id }, "id");
    expect(keys()).toEqual([first]);
    session.undo();
    expect([titles(session), keys()]).toEqual([["station 1"], [first]]);
    session.redo();
    const copy = session.copy(0);
    expect(keys()).toEqual([first, copy]);
    expect(copy).not.toBe(first);
  });

  it("makes two steps when the field was left between", () => {
    const { session } = begun();
    session.describe({ title: "A" }, "title");
    session.endTyping();
    session.describe({ title: "Ab" }, "title");
    session.undo();
    expect(session.sheet.title).toBe("A");
  });

  it("types on after an undo without losing what was there", () => {
    const { session } = begun();
    session.describe({ title: "A" }, "title");
    session.undo();
    session.describe({ title: "B" }, "title");
    session.undo();
    expect(session.sheet.title).toBe("New sheet");
  });

  it("adds, copies, moves and removes stations, tells so, and keeps every state", () => {
    const { kept, session } = begun();
    session.add("zeroing");
    session.copy(0);
    expect(titles(session)).toEqual(["station 1", "station 3", "station 2"]);
    session.move(2, 0);
    expect(session.said).toBe("Set the zero is moved to place 1 of 3.");
    session.move(0, -1);
    expect(session.said).toBe("Set the zero is first already.");
    session.remove(1);
    expect(titles(session)).toEqual(["station 2", "station 3"]);
    expect(kept).toHaveLength(4);
    expect(kept.at(-1)).toBe(session.sheet);
  });

  it("says the same twice so that it is heard twice, and that there is nothing to undo", () => {
    const { kept, session } = begun();
    session.undo();
    const first = session.said;
    session.undo();
    expect(first).toBe("There is nothing to undo.");
    expect(session.said).not.toBe(first);
    expect(kept).toEqual([]);
  });
});
