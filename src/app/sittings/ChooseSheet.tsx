import { type FormEvent, useState } from "react";
import type { Sheet } from "../../drill/sheet/sheet";
import { sittingPlan } from "../../drill/sittingPlan";
import { messageOf } from "../shell/messageOf";
import { CheckRecord } from "./CheckRecord";
import type { CurrentSitting } from "./currentSitting";
import { SaveRecord } from "./SaveRecord";
import { SHEETS_TO_SIT, sheetAskedFor } from "./sheetChoice";
import type { KeptRecord } from "./sittingShelf";
import { clockText, verdictHeadline } from "./sittingWords";

/** What a sheet takes, in a few words. */
function sizeWords(sheet: Sheet): string {
  const { tries, questions, timeLimit_ms } = sittingPlan(sheet);
  const parts = [tries === 1 ? "1 try" : `${tries} tries`];
  if (questions > 0) parts.push(`${questions} questions`);
  if (timeLimit_ms !== null) parts.push(`at most ${clockText(timeLimit_ms)}`);
  return parts.join(" · ");
}

interface ChooseProps {
  readonly onChoose: (sheet: Sheet) => void;
}

function ShippedList({ onChoose }: ChooseProps) {
  return (
    <ul className="sitting-sheets">
      {SHEETS_TO_SIT.map(({ id, sheet }) => (
        <li key={id}>
          <button type="button" className="sitting-sheet" onClick={() => onChoose(sheet)}>
            <b>{sheet.title}</b>
            <span>{sheet.purpose}</span>
            <small>{sizeWords(sheet)}</small>
          </button>
        </li>
      ))}
    </ul>
  );
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
    <form className="sitting-link" onSubmit={submit}>
      <label htmlFor="sheet-link">A link to a sheet</label>
      <input
        id="sheet-link"
        className="field"
        autoComplete="off"
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      <button type="submit" className="button" disabled={text.trim() === ""}>
        Take this sheet
      </button>
      {problem !== null && (
        <p className="sitting-problem" role="alert">
          Not taken: {problem}.
        </p>
      )}
    </form>
  );
}

function Earlier({ records }: { readonly records: readonly KeptRecord[] }) {
  if (records.length === 0) return <p className="sitting-soft">No sitting has ended in this browser yet.</p>;
  return (
    <ul className="sitting-earlier">
      {records.map((kept) => (
        <li key={kept.id}>
          <span>
            <b>{kept.record.sheet.title}</b> {kept.record.startedAt.slice(0, 16).replace("T", " ")} UTC.{" "}
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
    <div className="sitting-page">
      {problem !== null && (
        <p className="sitting-problem" role="alert">
          This cannot be sat here: {problem}.
        </p>
      )}
      <section aria-label="Choose a sheet">
        <h2>
          Choose a sheet <small>a timed self-test, without help unless the sheet gives it</small>
        </h2>
        <ShippedList onChoose={onChoose} />
        <LinkForm onChoose={onChoose} />
      </section>
      <section aria-label="Earlier sittings">
        <h2>Earlier sittings</h2>
        <Earlier records={current.shelf.records} />
      </section>
      <CheckRecord />
    </div>
  );
}
