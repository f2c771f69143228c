import { useMemo } from "react";
import type { Sheet } from "../../../drill/sheet/sheet";
import { sittingPlan } from "../../../drill/sitting/sittingPlan";
import { countText } from "../../../wording/amountWords";
import { openShelf } from "../../keeping/sheets/openShelf";
import { useStore } from "../../parts/page/useStore";
import { spanWords } from "../session/sittingWords";
import { asksForRealDial } from "./realDialAsked";
import { ownSheetsToSit, SHEETS_TO_SIT } from "./sheetChoice";

const RULED = SHEETS_TO_SIT.filter(({ sheet }) => sheet.sitting !== undefined);
const UNRULED = SHEETS_TO_SIT.filter(({ sheet }) => sheet.sitting === undefined);

/** What a sheet takes, in a few words. */
function sizeWords(sheet: Sheet): string {
  const { tries, questions, timeLimit_ms } = sittingPlan(sheet);
  const parts = [countText(tries, "try", "tries")];
  if (questions > 0) parts.push(countText(questions, "question", "questions"));
  if (timeLimit_ms !== null) parts.push(`at most ${spanWords(timeLimit_ms)}`);
  if (asksForRealDial(sheet)) parts.push("a real dial to turn");
  return parts.join(" · ");
}

interface CardsProps {
  readonly title: string;
  readonly sheets: readonly { readonly id: string; readonly sheet: Sheet }[];
  readonly onChoose: (sheet: Sheet) => void;
}

function Cards({ title, sheets, onChoose }: CardsProps) {
  return (
    <>
      <h3 className="mt-4 mb-3 font-normal text-soft">{title}</h3>
      <ul className="plain tiles-[270px] gap-4">
        {sheets.map(({ id, sheet }) => (
          <li key={id} className="flex">
            <button
              type="button"
              className="card flex-1 gap-2 p-4 text-left cursor-pointer hover:border-line"
              onClick={() => onChoose(sheet)}
            >
              <b>{sheet.title}</b>
              <span>{sheet.purpose}</span>
              <small className="mt-auto">{sizeWords(sheet)}</small>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

/** Own sheets and samples, each a card that begins a sitting. */
export function SheetsToSit({ onChoose }: Pick<CardsProps, "onChoose">) {
  const { own: records } = useStore(useMemo(openShelf, []));
  const { sound, unsound } = useMemo(() => ownSheetsToSit(records), [records]);
  return (
    <>
      {sound.length > 0 && <Cards title="Your sheets" sheets={sound} onChoose={onChoose} />}
      {unsound > 0 && (
        <p className="text-soft">
          {countText(unsound, "sheet", "sheets")} of yours cannot be used yet. Fix what is marked under{" "}
          <a href="#/sheets">Drill sheets</a>.
        </p>
      )}
      <Cards title="Samples for a test" sheets={RULED} onChoose={onChoose} />
      <Cards title="Samples for practice, from the first lesson" sheets={UNRULED} onChoose={onChoose} />
    </>
  );
}
