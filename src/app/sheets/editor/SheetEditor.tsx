import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState, useSyncExternalStore } from "react";
import type { Sheet } from "../../../drill/sheet/sheet";
import { type Problem, pathText } from "../../../lock/problem";
import type { SheetShelf } from "../../keeping/sheets/sheetShelf";
import { Preview } from "../Preview";
import { PrintedCode, SheetActions } from "../SheetActions";
import { EditSession } from "./editSession";
import { ProblemsContext } from "./fields";
import { fieldSentence, placedDoubts, placeWords, sheetProblems } from "./placedProblems";
import { HeadFields, OrderFields } from "./SheetFields";
import { SittingFields } from "./SittingFields";
import { StationList } from "./StationList";

function KeptNote({ shelf }: { readonly shelf: SheetShelf }) {
  if (shelf.problem !== null) {
    return (
      <p className="sheets-kept" role="alert">
        {shelf.problem}
      </p>
    );
  }
  // Not spoken: it would interrupt at every letter.
  return <p className="sheets-kept">{shelf.isKeeping ? "Saving…" : "Saved in this browser."}</p>;
}

/** All that is to be fixed, shown as soon as it is. */
function ProblemList({ problems }: { readonly problems: readonly Problem[] }) {
  return (
    <div role="status">
      {problems.length > 0 && (
        <ul className="sheets-plain sheets-problems">
          {problems.map((problem) => (
            <li key={pathText(problem.path)}>
              <b>{placeWords(problem.path)}:</b> {fieldSentence(problem)}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** Undo and redo by the keys one expects, in fields too: their letters are part of the sheet's history. */
function undoKey(event: KeyboardEvent, session: EditSession): void {
  const isUndoKey = (event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === "z";
  const isRedoKey = event.ctrlKey && event.key.toLowerCase() === "y";
  const isElsewhere = document.querySelector('[role="dialog"]') !== null;
  if (isElsewhere || (!isUndoKey && !isRedoKey)) return;
  event.preventDefault();
  if (isRedoKey || event.shiftKey) session.redo();
  else session.undo();
}

/** Hears undo and redo wherever the focus is, and ends a step of typing when a field is left. */
function useEditKeys(session: EditSession): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => undoKey(event, session);
    const onLeave = () => session.endTyping();
    addEventListener("keydown", onKey);
    addEventListener("focusout", onLeave);
    return () => {
      removeEventListener("keydown", onKey);
      removeEventListener("focusout", onLeave);
    };
  }, [session]);
}

function UndoButtons({ session }: { readonly session: EditSession }) {
  return (
    <>
      <button
        type="button"
        className="button"
        aria-disabled={!session.canUndo}
        title="Ctrl+Z"
        onClick={() => session.undo()}
      >
        Undo
      </button>
      <button
        type="button"
        className="button"
        aria-disabled={!session.canRedo}
        title="Ctrl+Shift+Z"
        onClick={() => session.redo()}
      >
        Redo
      </button>
    </>
  );
}

const EMPTY: readonly Problem[] = [];

/** The sheet as it was when it was last sound, so that the preview does not vanish at a slip of the hand. */
function useLastSound(sheet: Sheet, isSound: boolean): Sheet | null {
  const [last, setLast] = useState<Sheet | null>(isSound ? sheet : null);
  if (isSound && last !== sheet) setLast(sheet);
  return last;
}

function LivePreview({ sheet, isSound }: { readonly sheet: Sheet; readonly isSound: boolean }) {
  const last = useLastSound(sheet, isSound);
  return (
    <>
      {!isSound && (
        <p className="sheets-note">
          {last === null
            ? "Fix the marked fields. Then the sheet is shown here as the trainee sees it."
            : "This is the sheet before your last change. Fix the marked fields to see it as it is now."}
        </p>
      )}
      {last !== null && isSound && <PrintedCode sheet={last} />}
      {last !== null && <Preview sheet={last} />}
    </>
  );
}

interface SheetEditorProps {
  readonly id: string;
  readonly start: Sheet;
  readonly shelf: SheetShelf;
}

/** Builds and changes an own sheet; every change is saved. */
export function SheetEditor({ id, start, shelf }: SheetEditorProps) {
  const [session] = useState(() => new EditSession(start, (sheet) => shelf.change(id, sheet)));
  useSyncExternalStore(
    session.subscribe,
    useCallback(() => session.version, [session]),
  );
  useEffect(() => {
    const keep = () => {
      if (document.visibilityState === "hidden") shelf.flush();
    };
    document.addEventListener("visibilitychange", keep);
    return () => {
      document.removeEventListener("visibilitychange", keep);
      shelf.flush();
    };
  }, [shelf]);

  useEditKeys(session);
  const preview = useRef<HTMLDivElement>(null);

  const settled = useDeferredValue(session.sheet);
  const problems = useMemo(() => sheetProblems(settled), [settled]);
  const isSound = problems.length === 0;
  const doubts = useMemo(() => (isSound ? placedDoubts(settled) : EMPTY), [isSound, settled]);
  const byPath = useMemo(
    () => new Map([...doubts, ...problems].map((problem) => [pathText(problem.path), fieldSentence(problem)])),
    [problems, doubts],
  );

  return (
    <main className="sheets-editor">
      <div className="sheets-bench">
        <div className="sheets-bar">
          <a href="#/sheets">All sheets</a>
          <UndoButtons session={session} />
          <button type="button" className="button sheets-to-preview" onClick={() => preview.current?.focus()}>
            Show the sheet
          </button>
          <KeptNote shelf={shelf} />
        </div>
        <h1 className="sheets-heading" tabIndex={-1}>
          Edit a drill sheet
        </h1>
        <ProblemList problems={problems} />
        <ProblemsContext value={byPath}>
          <HeadFields session={session} />
          <StationList session={session} notes={[...problems, ...doubts]} />
          <section className="sheets-section" aria-labelledby="sheets-sat">
            <h2 id="sheets-sat">Order and rules</h2>
            <OrderFields session={session} />
            <SittingFields session={session} />
          </section>
        </ProblemsContext>
        <p className="visually-hidden" role="status">
          {session.said}
        </p>
      </div>
      <div className="sheets-preview" ref={preview} tabIndex={-1}>
        <div className="sheets-bar">
          <SheetActions sheet={isSound ? settled : null} />
        </div>
        <LivePreview sheet={settled} isSound={isSound} />
      </div>
    </main>
  );
}
