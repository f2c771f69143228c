import { EXPORT_FORMS, type ExportForm } from "../../../school/wire/recordsWire";
import { Button } from "../../parts/controls/Button";
import { CsvMarkChoice, useCsvMark } from "../../parts/files/CsvMarkChoice";
import { csvFileText } from "../../parts/files/csvFile";
import { fileNameOf } from "../../parts/files/fileName";
import { saveFile } from "../../parts/files/saveFile";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import type { Asking } from "../asking/asking";
import { EXPORT_WORDS, type ExportWords } from "./exportWords";

/** A file that the server makes. */
interface ServerFile extends ExportWords {
  /** What it holds, for its name. */
  readonly what: string;
  readonly path: string;
  readonly isCsv: boolean;
}

interface ListProps {
  readonly asking: Asking;
  /** "/people/ID" or "/classes/ID". */
  readonly path: string;
  /** Of the person or the class. */
  readonly name: string;
  /** Files beside the records, which come first. */
  readonly others?: readonly ServerFile[];
}

const isCsv = (form: ExportForm) => form !== "logbook" && form !== "xapi";

const fileOf = (path: string, form: ExportForm): ServerFile => ({
  ...EXPORT_WORDS[form],
  what: form,
  path: `${path}/export/${form}`,
  isCsv: isCsv(form),
});

/** Every form in which the records of a person or a class are saved. */
export function ExportList({ asking, path, name, others = [] }: ListProps) {
  const [mark, setMark] = useCsvMark();
  const { told, act, say } = useDoing();
  const save = (wanted: ServerFile) =>
    act(async () => {
      say("Loading the records. A large class takes a minute.");
      const file = await asking.file(wanted.path);
      const ending = wanted.isCsv ? "csv" : "json";
      saveFile({
        name: fileNameOf({ what: wanted.what, person: name, at: Date.now(), ending }),
        type: wanted.isCsv ? "text/csv" : "application/json",
        text: wanted.isCsv ? csvFileText(await file.text(), mark) : file,
      });
      return `The file of ${shownName(name)} is saved.`;
    });
  return (
    <>
      <ul className="plain">
        {[...others, ...EXPORT_FORMS.map((form) => fileOf(path, form))].map((one) => (
          <li key={one.path} className="row gap-x-4 py-2 ruled">
            <Button className="slim" onClick={() => save(one)}>
              {one.label}
            </Button>
            <small>{one.says}</small>
          </li>
        ))}
      </ul>
      <CsvMarkChoice mark={mark} onMark={setMark} />
      <ToldLine told={told} />
    </>
  );
}
