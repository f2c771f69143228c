import type { Sheet } from "../../drill/sheet/sheet";
import type { SheetRecord } from "../../records/records";
import { Button } from "../parts/controls/Button";
import { Preview } from "./preview/Preview";
import { PrintedCode, SheetActions } from "./share/SheetActions";

interface SheetReaderProps {
  readonly sheet: Sheet;
  /** What this sheet is and what may be done with it. */
  readonly note: string;
  /** Own sheets that ask the same. */
  readonly same?: readonly SheetRecord[];
  readonly keepLabel: string;
  readonly onKeep: () => void;
}

/** A sheet to look at: a sample, or one that came by link. */
export function SheetReader({ sheet, note, same = [], keepLabel, onKeep }: SheetReaderProps) {
  return (
    <main className="page max-w-[820px] print:block print:max-w-none print:p-0">
      <h1 className="visually-hidden" tabIndex={-1}>
        Drill sheet
      </h1>
      <div className="sheets-bar row gap-x-4 print:hidden">
        <a href="#/sheets">All sheets</a>
        <Button onClick={onKeep}>{keepLabel}</Button>
        <SheetActions sheet={sheet} />
      </div>
      <p className="col-span-full my-3 text-small text-soft print:hidden">{note}</p>
      {same.length > 0 && (
        <p className="col-span-full my-3 text-small text-soft print:hidden" role="note">
          You already have a sheet that asks the same:{" "}
          {same.map(({ id, title }) => (
            <a key={id} href={`#/sheets?own=${id}`}>
              {title}
            </a>
          ))}
          . Saving this one makes a second.
        </p>
      )}
      <PrintedCode sheet={sheet} />
      <Preview sheet={sheet} />
    </main>
  );
}
