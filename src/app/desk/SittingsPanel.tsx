import { SHIPPED_SHEETS } from "../../drill/sheet/shippedSheets";
import { sittingsCsv } from "../../records/csv/sittingsCsv";
import { ownSheets } from "../keeping/sheets/ownSheets";
import { useAsked } from "../keeping/useLogbook";
import { useCsvMark } from "../parts/files/CsvMarkChoice";
import { saveFile } from "../parts/files/saveFile";
import { APP_VERSION } from "../parts/page/appVersion";
import type { ClassView } from "./classView";
import { deskFile } from "./deskFile";
import { ScrolledTable } from "./ScrolledTable";
import { sittingChecks } from "./sittingChecks";
import { sittingsGrid, sittingsSentence } from "./sittingsGrid";

/** The sittings of the class in one grid, as their checked records tell them, with a file of them. */
export function SittingsPanel({ view: { contents, names } }: { readonly view: ClassView }) {
  const { records, traces } = contents;
  const { sittings, people } = records;
  const [mark] = useCsvMark();
  const key = sittings.map(({ id, updatedAt }) => `${id} ${updatedAt}`).join();
  const { answer } = useAsked(key, async () => {
    const onFile = new Map(people.map(({ id, name }) => [id, name]));
    const sheets = [...(await ownSheets()), ...SHIPPED_SHEETS];
    return sittingChecks(sittings, { appVersion: APP_VERSION, traces, names: onFile, sheets });
  });
  const sitters = people.filter(({ id, part }) => part === "trainee" || sittings.some((one) => one.personId === id));
  return (
    <section className="stack" aria-labelledby="desk-sittings">
      <h2 id="desk-sittings">Sittings</h2>
      {sittings.length === 0 && <p className="text-soft">No sittings in these logbooks.</p>}
      {sittings.length > 0 && answer === null && <p role="status">Checking {sittings.length} records…</p>}
      {sittings.length > 0 && answer !== null && (
        <>
          <p>
            {sittingsSentence([...answer.values()])} Every result comes from its checked record. A practice result is
            not a certificate.
          </p>
          <div className="row">
            <button
              type="button"
              className="button"
              onClick={() =>
                saveFile(deskFile("sittings", sittingsCsv(contents, APP_VERSION), { now: Date.now(), csv: mark }))
              }
            >
              Save the sittings as CSV
            </button>
          </div>
          <ScrolledTable table={sittingsGrid(sitters, names, sittings, answer)} />
        </>
      )}
    </section>
  );
}
