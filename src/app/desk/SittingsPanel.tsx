import { sittingsCsv } from "../../records/csv/sittingsCsv";
import { Button } from "../parts/controls/Button";
import { useCsvMark } from "../parts/files/CsvMarkChoice";
import { APP_VERSION } from "../parts/page/appVersion";
import type { ClassView } from "./classView";
import { ScrolledTable } from "./ScrolledTable";
import { saveCsv } from "./saveCsv";
import { sittingsGrid, sittingsSentence } from "./sittingsGrid";
import { useSittingChecks } from "./useSittingChecks";

/** The sittings of the class in one grid, as their checked records tell them, with a file of them. */
export function SittingsPanel({ view: { contents, names } }: { readonly view: Pick<ClassView, "contents" | "names"> }) {
  const { sittings, people } = contents.records;
  const [mark] = useCsvMark();
  const checks = useSittingChecks(contents, sittings);
  const sitters = people.filter(({ id, part }) => part === "trainee" || sittings.some((one) => one.personId === id));
  return (
    <section className="stack" aria-labelledby="desk-sittings">
      <h2 id="desk-sittings">Sittings</h2>
      {sittings.length === 0 && <p className="text-soft">No sittings in these logbooks.</p>}
      {sittings.length > 0 && checks === null && <p role="status">Checking {sittings.length} records…</p>}
      {sittings.length > 0 && checks !== null && (
        <>
          <p>
            {sittingsSentence([...checks.values()])} Every result comes from its checked record. A practice result is
            not a certificate.
          </p>
          <div className="row">
            <Button onClick={() => saveCsv("sittings", sittingsCsv(contents, APP_VERSION), mark)}>
              Save the sittings as CSV
            </Button>
          </div>
          <ScrolledTable table={sittingsGrid(sitters, names, sittings, checks)} />
        </>
      )}
    </section>
  );
}
