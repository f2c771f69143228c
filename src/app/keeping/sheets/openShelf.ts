import { newId } from "../../parts/page/newId";
import { type SheetKeeper, SheetShelf } from "./sheetShelf";

/** The sheets table of this browser's logbook, fetched when it is first needed. */
async function logbookKeeper(): Promise<SheetKeeper> {
  const [{ currentLogbook }, { dropSheet, recordsOfKind }] = await Promise.all([
    import("../currentLogbook"),
    import("../../../store/wholeLogbook"),
  ]);
  const { logbook } = await currentLogbook();
  return {
    all: () => recordsOfKind(logbook, "sheets"),
    keep: async (record) => {
      await logbook.save({ kind: "sheets", record });
    },
    drop: (id) => dropSheet(logbook, id),
    problem: () => logbook.problem?.message ?? null,
  };
}

let shelf: SheetShelf | null = null;

/** The shelf of this page, opened once, so that sheets live on where nothing can be kept. */
export function openShelf(): SheetShelf {
  shelf ??= new SheetShelf(logbookKeeper(), { now: Date.now, newId });
  return shelf;
}
