import { newId } from "../../parts/page/newId";
import { type SheetKeeper, SheetShelf } from "./sheetShelf";

/** The sheets table of this browser's logbook, fetched when it is first needed. */
async function logbookKeeper(): Promise<SheetKeeper> {
  const { currentLogbook } = await import("../currentLogbook");
  const { logbook } = await currentLogbook();
  return {
    all: async () => {
      const pending = logbook.pending.flatMap((write) => (write.kind === "sheets" ? [write.record] : []));
      const stored = await logbook.read((database) => database.sheets.toArray(), []);
      return [...pending, ...stored.filter(({ id }) => !pending.some((one) => one.id === id))];
    },
    keep: async (record) => {
      await logbook.save({ kind: "sheets", record });
    },
    drop: async (id) => {
      logbook.forget((write) => write.kind === "sheets" && write.record.id === id);
      if (logbook.database !== null) await logbook.change((database) => database.sheets.delete(id));
    },
    problem: () => logbook.problem?.message ?? null,
  };
}

let shelf: SheetShelf | null = null;

/** The shelf of this page, opened once, so that sheets live on where nothing can be kept. */
export function openShelf(): SheetShelf {
  shelf ??= new SheetShelf(logbookKeeper(), { now: Date.now, newId });
  return shelf;
}
