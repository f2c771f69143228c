import { useEffect, useMemo, useRef, useState } from "react";
import type { Sheet } from "../../drill/sheet/sheet";
import type { SheetRecord } from "../../records/records";
import { openShelf } from "../keeping/sheets/openShelf";
import { readDraft } from "../keeping/sheets/readDraft";
import type { SheetShelf } from "../keeping/sheets/sheetShelf";
import { sheetsAddress } from "../keeping/sheets/sheetsAddress";
import { focusHeading } from "../parts/page/focusHeading";
import { useStore } from "../parts/page/useStore";
import { copiedSheet } from "./editor/newSheet";
import { SheetEditor } from "./editor/SheetEditor";
import { SheetReader } from "./SheetReader";
import { Shelf } from "./Shelf";
import { sameSheets } from "./sameSheets";
import "./sheets.css";

interface OwnSheetProps {
  readonly id: string;
  readonly shelf: SheetShelf;
  readonly onTake: (sheet: Sheet) => void;
}

/** An own sheet in the editor. It is read once: from then on the editor knows best. */
function OpenedSheet({ record, shelf, onTake }: Omit<OwnSheetProps, "id"> & { readonly record: SheetRecord }) {
  const [start] = useState(() => readDraft(record.body));
  if (typeof start !== "string") return <SheetEditor id={record.id} {...{ start, shelf }} />;
  return (
    <Shelf
      {...{ shelf, onTake }}
      problem={`“${record.title}” cannot be opened: ${start}. It is still saved; export the logbook before you delete it.`}
    />
  );
}

function OwnSheet({ id, shelf, onTake }: OwnSheetProps) {
  const record = shelf.find(id);
  if (record !== null) return <OpenedSheet key={id} {...{ record, shelf, onTake }} />;
  if (!shelf.isReady) return <main className="shelf page max-w-[980px]" />;
  const problem = "This sheet is not here. It was deleted, or it is saved in another browser. Choose one below.";
  return <Shelf {...{ shelf, onTake, problem }} />;
}

/** At another page of this screen, reading begins at its heading; the first page leaves the focus where it is. */
function useFreshStart(query: URLSearchParams): void {
  const before = useRef(query);
  useEffect(() => {
    if (before.current === query) return;
    before.current = query;
    scrollTo(0, 0);
    focusHeading();
  }, [query]);
}

/** Drill sheets: a shelf of them, an editor, and a view of one that came by link. */
export function SheetsScreen({ query }: { readonly query: URLSearchParams }) {
  const shelf = useStore(useMemo(openShelf, []));
  const address = useMemo(() => sheetsAddress(query), [query]);
  useFreshStart(query);
  const onTake = (sheet: Sheet) => {
    location.hash = `#/sheets?own=${shelf.add(sheet)}`;
  };
  switch (address.shows) {
    case "own":
      return <OwnSheet id={address.id} {...{ shelf, onTake }} />;
    case "sample":
      return (
        <SheetReader
          sheet={address.sheet}
          note="You cannot change a sample sheet. Copy it, and change the copy."
          keepLabel="Copy and edit"
          onKeep={() => onTake(copiedSheet(address.sheet))}
        />
      );
    case "link":
      return (
        <SheetReader
          sheet={address.sheet}
          note="This sheet came by link. Save it if you want it among your sheets. Nothing of yours is overwritten."
          same={sameSheets(address.sheet, shelf.own)}
          keepLabel="Save this sheet"
          onKeep={() => onTake(address.sheet)}
        />
      );
    case "shelf":
      return <Shelf {...{ shelf, onTake }} problem={null} />;
    case "problem":
      return <Shelf {...{ shelf, onTake }} problem={address.says} />;
  }
}
