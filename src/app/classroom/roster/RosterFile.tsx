import { useRef, useState } from "react";
import type * as z from "zod/mini";
import { schoolProblem } from "../../../school/schoolWords";
import { type PreviewRow, rosterPreview, takenRoster } from "../../../school/wire/rosterWire";
import { countText } from "../../../wording/amountWords";
import type { Problem } from "../../../wording/problem";
import { Button } from "../../parts/controls/Button";
import { FileButton } from "../../parts/files/FileButton";
import { shownName } from "../../parts/shownName";
import { StackedTable } from "../../parts/TextTable";
import { ToldLine, useDoing } from "../../parts/Told";
import { problemWords } from "../../school/askServer";
import type { OfClass } from "../asking/classProps";

/** A file that was looked at and not taken yet. */
interface Looked {
  readonly csv: string;
  readonly preview: z.infer<typeof rosterPreview>;
}

const NO_TEXT =
  "This is not a CSV file. In your spreadsheet program, save the list as CSV, and choose the file that this makes.";

const extraText = (extra: number | null) => (extra === null || extra === 0 ? "" : `, extra time ${extra} %`);

/** What becomes of a row, in words. */
function outcomeText(row: PreviewRow): string {
  switch (row.outcome) {
    case "added":
      return `new${extraText(row.extraTime)}`;
    case "matched":
      return `${row.isInClass ? "is in this class already" : "is known in the school, comes into this class"}${extraText(row.extraTime)}`;
    case "refused":
      return `left out: ${problemWords((row.why as Problem | undefined) ?? schoolProblem("no-name", []))}`;
  }
}

const rowsOf = ({ rows }: Looked["preview"]) =>
  rows.map((row) => [`Line ${row.line}`, shownName(row.name), outcomeText(row)]);

interface FileProps extends OfClass {
  /** Called once the names are on the roster: what was pressed is gone then. */
  readonly onTaken: () => void;
}

/** Names from a file: first what would become of each row, then, when the instructor says so, that. */
export function RosterFile({ asking, one, onTaken }: FileProps) {
  const [looked, setLooked] = useState<Looked | null>(null);
  const { told, act } = useDoing();
  const heading = useRef<HTMLHeadingElement>(null);
  const path = `/classes/${one.id}/roster`;
  /** Puts the preview away, and the focus where another file is chosen: the button that had it goes too. */
  const putAway = () => {
    setLooked(null);
    heading.current?.focus();
  };
  const look = (file: File) =>
    act(async () => {
      setLooked(null);
      const csv = await file.text();
      // The own file of a spreadsheet program is packed: its bytes would come as names that nobody has.
      if (csv.includes("\0")) throw new Error(NO_TEXT);
      setLooked({ csv, preview: await asking.change(`${path}/preview`, rosterPreview, { csv }) });
      return "This is what the file would do. Nothing is written yet.";
    });
  const take = ({ csv, preview }: Looked) =>
    act(async () => {
      putAway();
      const taken = await asking.change(path, takenRoster, { csv, seen: preview.seen });
      onTaken();
      return `${taken.added} new, ${taken.matched} known, ${taken.refused} left out.`;
    });
  const comes = looked?.preview.rows.filter(({ outcome }) => outcome !== "refused").length ?? 0;
  return (
    <section className="stack" aria-labelledby="roster-file">
      <h3 id="roster-file" tabIndex={-1} ref={heading}>
        Names from a file
      </h3>
      <p className="text-small text-soft">
        A CSV file with one person a row: a column “name”, and if you like “extra time” in percent. You see what it does
        before anything is written.
      </p>
      <div className="row">
        <FileButton accept=".csv,.txt,text/csv" onFile={look}>
          Choose a CSV file
        </FileButton>
      </div>
      <ToldLine told={told} />
      {looked !== null && looked.preview.rows.length === 0 && (
        <p>There is no name in this file. Put one person in each row, the name in the first column.</p>
      )}
      {looked !== null && looked.preview.rows.length > 0 && (
        <>
          <StackedTable caption="Preview" head={["Row", "Name", "What happens"]} rows={rowsOf(looked.preview)} />
          <div className="row">
            {comes > 0 && (
              <Button className="primary" onClick={() => take(looked)}>
                Put {countText(comes, "person", "people")} on the roster
              </Button>
            )}
            <Button onClick={putAway}>Cancel</Button>
          </div>
        </>
      )}
    </section>
  );
}
