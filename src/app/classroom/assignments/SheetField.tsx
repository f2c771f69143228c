import { useId, useState } from "react";
import { sheetFingerprint } from "../../../drill/sheet/sheetFingerprint";
import { linkOf } from "../../keeping/sheets/sheetsAddress";
import { useAsked } from "../../keeping/useLogbook";
import { Select } from "../../parts/controls/Select";
import { FileButton } from "../../parts/files/FileButton";
import { Notice } from "../../parts/Notice";
import { messageOf } from "../../parts/page/messageOf";
import { shownName } from "../../parts/shownName";
import { sheetSizeText } from "../../results/sheetSizeText";
import { type OfferedSheet, offeredSheets, sheetChoices, sheetOfFile } from "./sheetSources";

interface ChosenProps {
  readonly chosen: OfferedSheet;
}

/** What a sheet asks, in short, and the way to all of it. */
export function ChosenSheet({ chosen: { sheet } }: ChosenProps) {
  const link = linkOf(sheet, "sheets");
  return (
    <div className="card gap-2">
      <b className="font-medium wrap-anywhere">{shownName(sheet.title)}</b>
      <p className="wrap-anywhere">{shownName(sheet.purpose)}</p>
      <small>
        {sheetSizeText(sheet)} · fingerprint {sheetFingerprint(sheet)}
        {"hash" in link && (
          <>
            {" · "}
            <a href={link.hash} target="_blank" rel="noreferrer">
              Read the whole sheet<span className="visually-hidden"> (opens another tab)</span>
            </a>
          </>
        )}
      </small>
    </div>
  );
}

interface SheetFieldProps {
  /** The sheet of the assignment that is changed, or assigned anew; null where there is none. */
  readonly assigned: OfferedSheet | null;
  readonly chosen: OfferedSheet | null;
  readonly onChoose: (chosen: OfferedSheet | null) => void;
  /** What is wrong with it, a sentence. */
  readonly says: string | undefined;
}

/** Which sheet: a sample, one of this browser's own, or one from a file. */
export function SheetField({ assigned, chosen, onChoose, says }: SheetFieldProps) {
  const id = useId();
  const [fromFile, setFromFile] = useState<OfferedSheet | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const { answer } = useAsked("sheets", offeredSheets);
  const offered = [assigned, fromFile].filter((one) => one !== null).concat(answer ?? []);
  const load = async (file: File) => {
    try {
      const loaded = await sheetOfFile(file);
      setProblem(null);
      setFromFile(loaded);
      onChoose(loaded);
    } catch (error) {
      setProblem(`${messageOf(error)}.`);
    }
  };
  return (
    <div className="stack">
      <label className="font-medium" htmlFor={id}>
        Sheet
      </label>
      <div className="row">
        <Select
          id={id}
          className="max-w-full min-w-0"
          value={chosen?.key ?? ""}
          choices={sheetChoices(offered)}
          onChoice={(key) => onChoose(offered.find((one) => one.key === key) ?? null)}
          aria-invalid={says !== undefined}
          aria-describedby={says === undefined ? undefined : `${id}-says`}
        />
        <FileButton accept=".json,application/json" onFile={load}>
          Choose a sheet file
        </FileButton>
      </div>
      {says !== undefined && (
        <span className="problem" id={`${id}-says`}>
          {says}
        </span>
      )}
      {problem !== null && <Notice className="">{problem}</Notice>}
      {chosen !== null && <ChosenSheet chosen={chosen} />}
    </div>
  );
}
