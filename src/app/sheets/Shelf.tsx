import { type ReactNode, useEffect, useRef, useState } from "react";
import type { Sheet } from "../../drill/sheet/sheet";
import { SHIPPED_SHEETS } from "../../drill/sheet/shippedSheets";
import type { SheetRecord } from "../../records/records";
import { readDraft } from "../keeping/sheets/readDraft";
import { sheetFromFile } from "../keeping/sheets/sheetFile";
import type { SheetShelf } from "../keeping/sheets/sheetShelf";
import { Button } from "../parts/controls/Button";
import { FileButton } from "../parts/files/FileButton";
import { Notice } from "../parts/Notice";
import { focusHeading } from "../parts/page/focusHeading";
import { sheetLine } from "../results/sheetWords";
import { WordLink } from "../words/WordLink";
import { WordsHere } from "../words/WordsHere";
import { blankSheet, copiedSheet } from "./editor/newSheet";

/** A notice that does not shout. */
const QUIET = "row gap-4 mt-4 border-hair border-l-accent";

interface ShelfProps {
  readonly shelf: SheetShelf;
  /** Puts a sheet on the shelf and opens it. */
  readonly onTake: (sheet: Sheet) => void;
  /** What was wrong with the address that led here, or null. */
  readonly problem: string | null;
}

function LoadSheet({ onTake }: Pick<ShelfProps, "onTake">) {
  const [problem, setProblem] = useState<string | null>(null);
  const read = async (file: File) => {
    const sheet = await sheetFromFile(file);
    setProblem(typeof sheet === "string" ? sheet : null);
    if (typeof sheet !== "string") onTake(sheet);
  };
  return (
    <>
      <FileButton accept=".json" onFile={read}>
        Load a file
      </FileButton>
      {problem !== null && <Notice className={QUIET}>{problem}</Notice>}
    </>
  );
}

function DeletedNote({ shelf }: { readonly shelf: SheetShelf }) {
  const undo = useRef<HTMLButtonElement>(null);
  const id = shelf.deleted?.id;
  useEffect(() => {
    if (id !== undefined) undo.current?.focus();
  }, [id]);
  return (
    <div role="status">
      {shelf.deleted !== null && (
        <p className={`notice ${QUIET}`}>
          “{shelf.deleted.title}” was deleted.
          <Button
            ref={undo}
            onClick={() => {
              shelf.restore();
              focusHeading();
            }}
          >
            Undo
          </Button>
        </p>
      )}
    </div>
  );
}

interface RowProps {
  readonly href: string;
  readonly title: string;
  /** What the sheet is, in a paragraph or two. */
  readonly children: ReactNode;
  /** Copies it; null for one that cannot be read. */
  readonly onCopy: (() => void) | null;
  readonly onDelete?: () => void;
}

function Row({ href, title, children, onCopy, onDelete }: RowProps) {
  return (
    <li className="flex items-start justify-between gap-5 py-4 ruled-below">
      <div>
        <a className="font-semibold" href={href}>
          {title}
        </a>
        {children}
      </div>
      <div className="row flex-none gap-2">
        {onCopy !== null && (
          <Button aria-label={`Copy: ${title}`} onClick={onCopy}>
            Copy
          </Button>
        )}
        {onDelete !== undefined && (
          <Button aria-label={`Delete: ${title}`} onClick={onDelete}>
            Delete
          </Button>
        )}
      </div>
    </li>
  );
}

function OwnRow({ record, shelf, onTake }: { readonly record: SheetRecord } & Pick<ShelfProps, "shelf" | "onTake">) {
  const { id, title, body } = record;
  const sheet = readDraft(body);
  const isReadable = typeof sheet !== "string";
  return (
    <Row
      href={`#/sheets?own=${id}`}
      title={title}
      onCopy={isReadable ? () => onTake(copiedSheet(sheet)) : null}
      onDelete={() => shelf.remove(id)}
    >
      <p className="text-small text-soft">
        {isReadable ? sheetLine(sheet) : `This sheet cannot be opened: ${sheet}. It is still saved.`}
      </p>
    </Row>
  );
}

function OwnSheets({ shelf, onTake }: Pick<ShelfProps, "shelf" | "onTake">) {
  if (shelf.own.length > 0) {
    return (
      <ul className="plain col-span-full">
        {shelf.own.map((record) => (
          <OwnRow key={record.id} {...{ record, shelf, onTake }} />
        ))}
      </ul>
    );
  }
  const says = shelf.isReady
    ? "You have no sheets yet. Make a new one, copy a sample, or load a file."
    : "Opening the logbook…";
  return <p className="col-span-full my-3 text-small text-soft print:hidden">{says}</p>;
}

/** All sheets: own ones and samples. */
export function Shelf({ shelf, onTake, problem }: ShelfProps) {
  return (
    <main className="shelf page max-w-[980px]">
      <div className="sheets-bar row gap-x-4 print:hidden">
        <h1 className="mt-4 mb-2" tabIndex={-1}>
          Drill sheets
        </h1>
        <WordsHere>
          <WordLink word="drill-sheet">drill sheet</WordLink>
        </WordsHere>
        <Button className="primary" onClick={() => onTake(blankSheet())}>
          New sheet
        </Button>
        <LoadSheet onTake={onTake} />
      </div>
      {problem !== null && <Notice className={QUIET}>{problem}</Notice>}
      {shelf.problem !== null && <p className={`notice ${QUIET}`}>{shelf.problem}</p>}
      <DeletedNote shelf={shelf} />
      <section aria-labelledby="shelf-own">
        <h2 id="shelf-own">Your sheets</h2>
        <OwnSheets {...{ shelf, onTake }} />
      </section>
      <section aria-labelledby="shelf-samples">
        <h2 id="shelf-samples">Sample sheets, from the first lesson to the test before certification</h2>
        <ol className="plain col-span-full">
          {SHIPPED_SHEETS.map((sheet, k) => (
            <Row
              key={sheet.title}
              href={`#/sheets?sample=${k + 1}`}
              title={sheet.title}
              onCopy={() => onTake(copiedSheet(sheet))}
            >
              <p>{sheet.purpose}</p>
              <p className="text-small text-soft">{sheetLine(sheet)}</p>
            </Row>
          ))}
        </ol>
      </section>
    </main>
  );
}
