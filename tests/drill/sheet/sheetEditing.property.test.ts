import fc from "fast-check";
import { expect, test, vi } from "vitest";
import { DrillError } from "../../../src/drill/drillError";
import {
  beginEditing,
  type Edit,
  type Editing,
  edited,
  freeStationId,
  MOST_STEPS,
  redone,
  undone,
} from "../../../src/drill/sheet/sheetEditing";
import { anySheet, anySheetStation } from "../../support/anySheet";
import { dialingStation, testSheet } from "../../support/testSheet";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 60_000 });

/** A change named by fractions of the list, so that it can be aimed at any sheet. */
const share = fc.integer({ min: 0, max: 999 }).map((thousandths) => thousandths / 1000);
const aimed = fc.record({
  type: fc.constantFrom("add" as const, "remove" as const, "move" as const, "change" as const, "describe" as const),
  a: share,
  b: share,
  station: anySheetStation,
});
type Aimed = typeof aimed extends fc.Arbitrary<infer T> ? T : never;

function aim({ type, a, b, station }: Aimed, { sheet }: Editing): Edit | undefined {
  const count = sheet.stations.length;
  if (type === "describe") return { type, fields: { title: `title ${a}` } };
  if (type === "add") return { type, station, at: Math.floor(a * (count + 1)) };
  if (count === 0) return undefined;
  const at = Math.floor(a * count);
  if (type === "move") return { type, from: at, to: Math.floor(b * count) };
  return type === "change" ? { type, at, station } : { type, at };
}

/** Makes changes one after another; each sheet on the way. */
function madeIn(start: Editing, edits: readonly Aimed[]): Editing[] {
  const states = [start];
  for (const one of edits) {
    const now = states.at(-1) ?? start;
    const edit = aim(one, now);
    if (edit !== undefined) states.push(edited(now, edit));
  }
  return states;
}

const edits = fc.array(aimed, { maxLength: 20 });

test("undoing gives back every sheet on the way, and redoing every sheet on the way forth", () => {
  fc.assert(
    fc.property(anySheet, edits, (sheet, all) => {
      const states = madeIn(beginEditing(sheet), all);
      let now = states.at(-1) as Editing;
      for (const before of states.slice(0, -1).reverse()) {
        now = undone(now);
        expect(now.sheet).toEqual(before.sheet);
      }
      expect(undone(now)).toBe(now);
      for (const after of states.slice(1)) {
        now = redone(now);
        expect(now.sheet).toEqual(after.sheet);
      }
      expect(redone(now)).toBe(now);
    }),
    { numRuns: 60 },
  );
});

test("a change after undoing leaves nothing to redo", () => {
  fc.assert(
    fc.property(anySheet, edits, aimed, (sheet, all, last) => {
      const back = undone(madeIn(beginEditing(sheet), all).at(-1) as Editing);
      const edit = aim(last, back);
      fc.pre(edit !== undefined);
      const after = edited(back, edit as Edit);
      expect(after.future).toEqual([]);
      expect(undone(after).sheet).toEqual(back.sheet);
    }),
    { numRuns: 60 },
  );
});

test("a move keeps every station, and moving back restores the order", () => {
  fc.assert(
    fc.property(anySheet, share, share, (sheet, a, b) => {
      const count = sheet.stations.length;
      const [from, to] = [Math.floor(a * count), Math.floor(b * count)];
      const there = edited(beginEditing(sheet), { type: "move", from, to });
      expect(there.sheet.stations[to]).toBe(sheet.stations[from]);
      expect(edited(there, { type: "move", from: to, to: from }).sheet).toEqual(sheet);
    }),
    { numRuns: 60 },
  );
});

test("nothing is changed in place", () => {
  const sheet = testSheet();
  const text = JSON.stringify(sheet);
  const begun = beginEditing(sheet);
  edited(begun, { type: "add", station: dialingStation({ id: "two" }), at: 1 });
  edited(begun, { type: "remove", at: 0 });
  expect(JSON.stringify(sheet)).toBe(text);
});

test.each([
  { edit: { type: "remove", at: 1 } },
  { edit: { type: "remove", at: -1 } },
  { edit: { type: "add", at: 2, station: dialingStation() } },
  { edit: { type: "move", from: 0, to: 1 } },
  { edit: { type: "change", at: 0.5, station: dialingStation() } },
] as { edit: Edit }[])("$edit.type at a place that is none is refused", ({ edit }) => {
  expect(() => edited(beginEditing(testSheet()), edit)).toThrow(DrillError);
});

test("only so many steps are kept", () => {
  let now = beginEditing(testSheet());
  for (let i = 0; i < MOST_STEPS + 5; i++) now = edited(now, { type: "describe", fields: { title: `title ${i}` } });
  expect(now.past).toHaveLength(MOST_STEPS);
});

test("a new station gets a name that no other has", () => {
  const stations = [dialingStation({ id: "station 2" }), dialingStation({ id: "station 3" })];
  expect(freeStationId({ stations })).toBe("station 4");
  expect(freeStationId({ stations: [dialingStation({ id: "station 2" })] })).toBe("station 3");
});
