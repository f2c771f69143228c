import { useMemo } from "react";
import type { Sheet } from "../../../drill/sheet/sheet";
import { countText } from "../../../wording/amountWords";
import { openShelf } from "../../keeping/sheets/openShelf";
import { ownSheetsToSit, SHEETS_TO_SIT } from "../../keeping/sheets/sheetChoice";
import { useStore } from "../../parts/page/useStore";
import { sheetSizeText } from "../../results/sheetSizeText";

const RULED = SHEETS_TO_SIT.filter(({ sheet }) => sheet.sitting !== undefined);
const UNRULED = SHEETS_TO_SIT.filter(({ sheet }) => sheet.sitting === undefined);

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
              <small className="mt-auto">{sheetSizeText(sheet)}</small>
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
