import { type FormEvent, useState } from "react";
import type { Sheet } from "../../../drill/sheet/sheet";
import { sheetAskedFor } from "../../keeping/sheets/sheetChoice";
import { clockText, dayText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import { messageOf } from "../../parts/page/messageOf";
import type { KeptRecord } from "../../verdicts/keptRecord";
import { SaveRecord } from "../../verdicts/SaveRecord";
import { verdictHeadline } from "../../verdicts/sittingWords";
import { WordLink } from "../../words/WordLink";
import { WordsHere } from "../../words/WordsHere";
import { CheckRecord } from "../result/CheckRecord";
import type { CurrentSitting } from "../session/currentSitting";
import { SheetsToSit } from "./SheetsToSit";

interface ChooseProps {
  readonly onChoose: (sheet: Sheet) => void;
}

function LinkForm({ onChoose }: ChooseProps) {
  const [text, setText] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    try {
      onChoose(sheetAskedFor(text));
    } catch (error) {
      setProblem(messageOf(error));
    }
  };
  return (
    <form className="row mt-4" onSubmit={submit}>
      <label htmlFor="sheet-link">Link to a sheet</label>
      <input
        id="sheet-link"
        className="field flex-1 min-w-[160px]"
        autoComplete="off"
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      <button type="submit" className="button" disabled={text.trim() === ""}>
        Open this sheet
      </button>
      {problem !== null && <Notice className="w-full">This link does not work: {problem}.</Notice>}
    </form>
  );
}

/** When a sitting was started, by the clock of this place. */
function startedWords({ startedAt }: KeptRecord["record"]): string {
  const moment = Date.parse(startedAt);
  return Number.isNaN(moment) ? startedAt : `${dayText(moment)} ${clockText(moment)}`;
}

function Earlier({ records }: { readonly records: readonly KeptRecord[] }) {
  if (records.length === 0) return <p className="text-soft">No earlier sittings in this browser.</p>;
  return (
    <ul className="plain">
      {records.map((kept) => (
        <li key={kept.id}>
          <span>
            <a href={`#/sittings?record=${kept.id}`}>{kept.record.sheet.title}</a> {startedWords(kept.record)}.{" "}
            {verdictHeadline(kept.record)}
          </span>
          <SaveRecord kept={kept} />
        </li>
      ))}
    </ul>
  );
}

interface ChooseSheetProps extends ChooseProps {
  readonly current: CurrentSitting;
  readonly problem: string | null;
}

/** Which sheet to sit; earlier sittings of this browser; and a place to check a record. */
export function ChooseSheet({ current, problem, onChoose }: ChooseSheetProps) {
  return (
    <div className="sitting-page page gap-6 max-w-[920px] pt-6">
      {problem !== null && <Notice className="w-full">This sheet cannot be used here: {problem}.</Notice>}
      <section aria-label="Choose a sheet">
        <div className="spread">
          <h2 className="mb-3">
            Choose a sheet <small>each is a timed self-test; the sheet sets how much help you get</small>
          </h2>
          <WordsHere>
            <WordLink word="sitting">sitting</WordLink>
            <WordLink word="verdict">not shown</WordLink>
          </WordsHere>
        </div>
        <SheetsToSit onChoose={onChoose} />
        <LinkForm onChoose={onChoose} />
      </section>
      <section aria-label="Earlier sittings">
        <h2 className="mb-3">Earlier sittings</h2>
        <Earlier records={current.shelf.records} />
      </section>
      <CheckRecord />
    </div>
  );
}
