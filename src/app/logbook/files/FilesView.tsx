import { useState } from "react";
import { harmlessName } from "../../../lock/harmlessText";
import { removeDemo, wholeLogbook } from "../../../store/wholeLogbook";
import { countText } from "../../../wording/amountWords";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { Select } from "../../parts/controls/Select";
import { CsvMarkChoice, useCsvMark } from "../../parts/files/CsvMarkChoice";
import { saveFile } from "../../parts/files/saveFile";
import { ToldLine, useDoing } from "../../parts/Told";
import { EXPORTS, type ExportKind, exportFileInSlices } from "./exportFiles";
import { ImportPanel } from "./ImportPanel";
import { loadDemo } from "./loadDemo";
import "../../pictures/charts/charts.css";

function ExportPanel({ current }: { readonly current: CurrentLogbook }) {
  const { person, logbook } = current;
  const [whose, setWhose] = useState<"all" | "own">("all");
  const { told, act, say } = useDoing();
  const [mark, setMark] = useCsvMark();
  const personId = whose === "own" && person !== null ? person.id : null;
  const save = (kind: ExportKind) =>
    act(async () => {
      const setting = { personId, now: Date.now(), csv: mark };
      const file = await exportFileInSlices(kind, await wholeLogbook(logbook), setting, say);
      saveFile(file);
      return file.told;
    });
  return (
    <section className="card" aria-labelledby="files-out">
      <h2 id="files-out">Export</h2>
      <p>Records leave this device only in files that you save.</p>
      {person !== null && (
        <Select
          className="self-start max-w-full"
          aria-label="Whose records"
          value={whose}
          choices={[
            ["all", "Everyone’s records"],
            ["own", `Only ${harmlessName(person.name)}’s records`],
          ]}
          onChoice={setWhose}
        />
      )}
      <ul className="plain stack">
        {EXPORTS.map(({ kind, label, use }) => (
          <li className="row gap-x-4 gap-y-2" key={kind}>
            <Button className="min-w-[158px] text-left" onClick={() => save(kind)}>
              {label}
            </Button>
            <small>{use}</small>
          </li>
        ))}
      </ul>
      <CsvMarkChoice mark={mark} onMark={setMark} />
      <ToldLine told={told} />
    </section>
  );
}

function DemoPanel({ current }: { readonly current: CurrentLogbook }) {
  const { logbook } = current;
  const { told, act } = useDoing();
  const load = async () => `${await loadDemo(current)} Tap a name above to look at that person’s records.`;
  const remove = async () => {
    const gone = await removeDemo(logbook);
    await current.settle();
    return `${countText(gone, "invented person", "invented people")} removed.`;
  };
  const { answer: people } = useAsked(`people ${current.version}`, () => current.people());
  const isLoaded = people?.some(({ isDemo }) => isDemo === true) === true;
  return (
    <section className="card" aria-labelledby="files-demo">
      <h2 id="files-demo">Demo logbook</h2>
      <p>
        A week at an invented trade school, to show what the logbook does. What you dial yourself is never saved under
        an invented name.
      </p>
      <div className="row mt-4">
        <Button onClick={() => act(isLoaded ? remove : load)}>{isLoaded ? "Remove the demo" : "Load the demo"}</Button>
      </div>
      <ToldLine told={told} />
    </section>
  );
}

/** Records in and out: export, import, and the demo. */
export function FilesView({ current }: { readonly current: CurrentLogbook }) {
  return (
    <div className="tiles-[420px] gap-4">
      <ExportPanel current={current} />
      <ImportPanel current={current} />
      <DemoPanel current={current} />
    </div>
  );
}
