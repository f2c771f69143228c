import { useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import type { Sheet } from "../../../drill/sheet/sheet";
import { type Problem, pathText } from "../../../wording/problem";
import type { SheetShelf } from "../../keeping/sheets/sheetShelf";
import { Button } from "../../parts/controls/Button";
import { onPageLeft } from "../../parts/page/onPageLeft";
import { useStore } from "../../parts/page/useStore";
import { Preview } from "../preview/Preview";
import { PrintedCode, SheetActions } from "../share/SheetActions";
import { EditSession } from "./editSession";
import { ProblemsContext } from "./fields";
import { fieldSentence, placedDoubts, placeWords, sheetProblems } from "./placedProblems";
import { HeadFields, OrderFields } from "./SheetFields";
import { SittingFields } from "./SittingFields";
import { StationList } from "./StationList";

function KeptNote({ shelf }: { readonly shelf: SheetShelf }) {
  if (shelf.problem !== null) {
    return (
      <p className="text-soft text-small ml-auto" role="alert">
        {shelf.problem}
      </p>
    );
  }
  // Not spoken: it would interrupt at every letter.
  return <p className="text-soft text-small ml-auto">{shelf.isKeeping ? "Saving…" : "Saved in this browser."}</p>;
}

/** All that is to be fixed, shown as soon as it is. */
function ProblemList({ problems }: { readonly problems: readonly Problem[] }) {
  return (
    <div role="status">
      {problems.length > 0 && (
        <ul className="row plain notice gap-4 mt-4 border-hair border-l-accent">
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
  const acts = [
    { title: "Ctrl+Z", can: session.canUndo, words: "Undo", act: () => session.undo() },
    { title: "Ctrl+Shift+Z", can: session.canRedo, words: "Redo", act: () => session.redo() },
  ];
  return acts.map(({ title, can, words, act }) => (
    <Button key={words} aria-disabled={!can} title={title} onClick={act}>
      {words}
    </Button>
  ));
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
        <p className="col-span-full my-3 text-small text-soft print:hidden">
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
  useStore(session);
  useEffect(() => {
    const stop = onPageLeft(() => shelf.flush());
    return () => {
      stop();
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
    <main className="grid grid-cols-[minmax(0,1.2fr)_minmax(0,1fr)] items-start max-[900px]:grid-cols-[minmax(0,1fr)] print:block">
      <div className="px-edge pt-4 pb-6 print:hidden">
        <div className="sheets-bar row gap-x-4 print:hidden">
          <a href="#/sheets">All sheets</a>
          <UndoButtons session={session} />
          <Button className="hidden max-[900px]:inline-block" onClick={() => preview.current?.focus()}>
            Show the sheet
          </Button>
          <KeptNote shelf={shelf} />
        </div>
        <h1 className="mt-4 mb-2" tabIndex={-1}>
          Edit a drill sheet
        </h1>
        <ProblemList problems={problems} />
        <ProblemsContext value={byPath}>
          <HeadFields session={session} />
          <StationList session={session} notes={[...problems, ...doubts]} />
          <section className="mt-6" aria-labelledby="sheets-sat">
            <h2 id="sheets-sat">Order and rules</h2>
            <OrderFields session={session} />
            <SittingFields session={session} />
          </section>
        </ProblemsContext>
        <p className="visually-hidden" role="status">
          {session.said}
        </p>
      </div>
      <div
        className="sticky top-0 min-h-[100dvh] max-h-[100dvh] overflow-y-auto px-edge pt-4 pb-6 border-l border-l-hair bg-plate max-[900px]:static max-[900px]:max-h-none max-[900px]:border-l-0 max-[900px]:border-t max-[900px]:border-t-hair print:static print:max-w-none print:max-h-none print:min-h-0 print:overflow-visible print:p-0 print:border-0"
        ref={preview}
        tabIndex={-1}
      >
        <div className="sheets-bar row gap-x-4 print:hidden">
          <SheetActions sheet={isSound ? settled : null} />
        </div>
        <LivePreview sheet={settled} isSound={isSound} />
      </div>
    </main>
  );
}
