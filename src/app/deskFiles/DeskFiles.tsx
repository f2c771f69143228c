import { useState } from "react";
import { harmlessName, harmlessText } from "../../lock/harmlessText";
import { fileSentences } from "../../records/fileWords";
import { mergeIntoLogbook } from "../../store/wholeLogbook";
import { type ClassView, deskSentence, fileSentence } from "../desk/classView";
import { currentLogbook } from "../keeping/currentLogbook";
import { mergedWords } from "../keeping/mergedWords";
import { ReadingLine } from "../keeping/reader/ReadingLine";
import { Button } from "../parts/controls/Button";
import { Dialog } from "../parts/controls/Dialog";
import { FilesButton } from "../parts/files/FileButton";
import { useDroppedFiles } from "../parts/files/useDroppedFiles";
import { focusHeading } from "../parts/page/focusHeading";
import { ToldLine, useDoing } from "../parts/Told";
import { WordLink } from "../words/WordLink";
import { WordsHere } from "../words/WordsHere";
import type { ClassDesk } from "./classDesk";

interface DeskProps {
  readonly desk: ClassDesk;
}

/** Offers to keep the class in the logbook of this browser, which the desk itself never writes to. */
function KeepClass({ desk }: DeskProps) {
  const [isAsked, setAsked] = useState(false);
  const { told, act, say } = useDoing();
  const close = () => setAsked(false);
  const keep = async () => {
    close();
    say("Saving the records. A large class takes a minute.");
    const current = await currentLogbook();
    const merged = await mergeIntoLogbook(current.logbook, desk.brought);
    await current.settle();
    return `Your logbook: ${mergedWords(merged)}`;
  };
  return (
    <>
      <Button aria-haspopup="dialog" onClick={() => setAsked(true)}>
        Add to this logbook
      </Button>
      <Dialog title="Add the class to this logbook?" isOpen={isAsked} onClose={close}>
        <p>
          Everyone in these files is added to the people of this browser, with all their records. A record that is here
          already is not added twice, and a newer one is never replaced. The demo class is not added.
        </p>
        <div className="row mt-4">
          <Button className="primary" onClick={() => act(keep)}>
            Add them
          </Button>
          <Button onClick={close}>Cancel</Button>
        </div>
      </Dialog>
      <ToldLine told={told} />
    </>
  );
}

/** What a button does that is gone with it: then reading begins at the heading. */
const thenHeading = (act: () => void) => () => {
  act();
  focusHeading();
};

/** The ways onto the desk: files, many at once, and the demo. */
function AddBar({ desk }: DeskProps) {
  return (
    <div className="row">
      <FilesButton accept=".json,application/json" isPrimary onFiles={(files) => desk.add(files)}>
        Add logbook files
      </FilesButton>
      {desk.hasDemo ? (
        <Button onClick={() => desk.removeDemo()}>Remove the demo class</Button>
      ) : (
        <Button onClick={() => desk.loadDemo(Date.now())}>Load the demo class</Button>
      )}
      {desk.files.some(({ isDemo }) => !isDemo) && <KeepClass desk={desk} />}
      {desk.files.length > 0 && <Button onClick={thenHeading(() => desk.clear())}>Clear the desk</Button>}
      <span className="ml-2 text-small text-soft phone:hidden">or drop files on this page</span>
    </div>
  );
}

function Problems({ desk }: DeskProps) {
  if (desk.problems.length === 0) return null;
  return (
    <div className="notice flex items-start justify-between gap-4 wrap-anywhere">
      <div role="alert" aria-label="Files that were not read">
        {desk.problems.map(({ key, name, sentence }) => (
          <p key={key}>
            <b>{harmlessName(name)}</b> was not read. {sentence}
          </p>
        ))}
      </div>
      <Button className="flex-none" aria-label="Close this message" onClick={thenHeading(() => desk.closeProblems())}>
        Close
      </Button>
    </div>
  );
}

/** What was read and does not count, or comes twice under two names. */
function Doubts({ desk }: DeskProps) {
  const doubts = [
    ...desk.files.flatMap(({ key, name, leftOut }) =>
      fileSentences(leftOut).map((sentence) => ({ key: `${key} ${sentence}`, name, sentence })),
    ),
    ...desk.copies.map((sentence) => ({ key: sentence, name: "Copies", sentence })),
  ];
  if (doubts.length === 0) return null;
  return (
    <div className="notice wrap-anywhere" role="alert" aria-label="Attempts that do not count">
      {doubts.map(({ key, name, sentence }) => (
        <p key={key}>
          <b>{harmlessText(name)}</b>: {harmlessText(sentence)}
        </p>
      ))}
    </div>
  );
}

function FileList({ desk }: DeskProps) {
  return (
    <ul className="plain tiles-[330px] gap-x-6 max-h-[264px] overflow-y-auto" aria-label="Logbooks on the desk">
      {desk.files.map((file) => (
        <li key={file.key} className="flex items-center justify-between gap-4 px-1 py-2 ruled">
          <span className="min-w-0 wrap-anywhere">
            <b className="font-medium">{harmlessName(file.name)}</b>
            <small className="block">{fileSentence(file)}</small>
          </span>
          <Button onClick={thenHeading(() => desk.remove(file.key))}>
            Remove<span className="visually-hidden"> {file.name}</span>
          </Button>
        </li>
      ))}
    </ul>
  );
}

const STAYS =
  "The files stay in this tab, on this device. They are gone when you close the tab. Your own logbook does not change.";

/** What to do while nothing lies on the desk, and what for. */
function HowTo() {
  return (
    <ol className="grid gap-3 max-w-[92ch] my-2">
      <li>
        Each trainee opens Logbook, Files, presses <b>Whole logbook</b> and gives you the file.
      </li>
      <li>You add all the files here, many at once. A bad file is named; the others still count.</li>
      <li>
        You see each person at each skill, the sittings, who is ready, what each one missed, and how much people differ.
      </li>
    </ol>
  );
}

/** What lies on the desk, and the ways on and off it. */
export function DeskFiles({ desk, view }: DeskProps & { readonly view: ClassView }) {
  const isOver = useDroppedFiles((files) => desk.add(files));
  const count = desk.files.length;
  return (
    <section
      className="card gap-4 data-over:border-dashed data-over:border-accent data-over:bg-well"
      data-over={isOver || undefined}
      aria-labelledby="desk-files"
    >
      <div className="spread">
        <h2 id="desk-files">Logbooks of the class</h2>
        <WordsHere>
          <WordLink word="stop-error">stop error</WordLink>
          <WordLink word="sitting">sitting</WordLink>
        </WordsHere>
      </div>
      {count === 0 ? <HowTo /> : <p className="max-w-[92ch]">{deskSentence(view, count)}</p>}
      <p className="max-w-[92ch] text-soft">{STAYS}</p>
      <AddBar desk={desk} />
      <ReadingLine reading={desk.reading} onStop={() => desk.stop()} />
      <Problems desk={desk} />
      <Doubts desk={desk} />
      {count > 0 && <FileList desk={desk} />}
    </section>
  );
}
