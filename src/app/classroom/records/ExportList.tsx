import { harmlessName } from "../../../lock/harmlessText";
import { EXPORT_FORMS, type ExportForm } from "../../../school/wire/recordsWire";
import { Button } from "../../parts/controls/Button";
import { CsvMarkChoice, useCsvMark } from "../../parts/files/CsvMarkChoice";
import { csvFileText } from "../../parts/files/csvFile";
import { fileNameOf } from "../../parts/files/fileName";
import { saveFile } from "../../parts/files/saveFile";
import { ToldLine, useDoing } from "../../parts/Told";
import type { Asking } from "../asking/asking";
import { EXPORT_WORDS } from "./exportWords";

interface ListProps {
  readonly asking: Asking;
  /** "/people/ID" or "/classes/ID". */
  readonly path: string;
  /** Of the person or the class. */
  readonly name: string;
}

const isCsv = (form: ExportForm) => form !== "logbook" && form !== "xapi";

/** Every form in which the records of a person or a class are saved. */
export function ExportList({ asking, path, name }: ListProps) {
  const [mark, setMark] = useCsvMark();
  const { told, act, say } = useDoing();
  const save = (form: ExportForm) =>
    act(async () => {
      say("Loading the records. A large class takes a minute.");
      const file = await asking.file(`${path}/export/${form}`);
      const ending = isCsv(form) ? "csv" : "json";
      saveFile({
        name: fileNameOf({ what: form, person: name, at: Date.now(), ending }),
        type: isCsv(form) ? "text/csv" : "application/json",
        text: isCsv(form) ? csvFileText(await file.text(), mark) : file,
      });
      return `The file of ${harmlessName(name)} is saved.`;
    });
  return (
    <>
      <ul className="plain">
        {EXPORT_FORMS.map((form) => (
          <li key={form} className="row gap-x-4 py-2 ruled">
            <Button className="slim" onClick={() => save(form)}>
              {EXPORT_WORDS[form].label}
            </Button>
            <small>{EXPORT_WORDS[form].says}</small>
          </li>
        ))}
      </ul>
      <CsvMarkChoice mark={mark} onMark={setMark} />
      <ToldLine told={told} />
    </>
  );
}
