import { useId, useState } from "react";
import type { SittingRecord } from "../../../records/records";
import type { SittingStanding } from "../../../records/sittingStanding";
import { sittingPage } from "../../../store/sittingQueries";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import type { Choices } from "../../parts/controls/Select";
import { useSettled } from "../../parts/page/useSettled";
import { FilterChoice } from "../list/FilterChoice";
import { Pager } from "../list/RecordList";
import { usePages } from "../list/usePages";
import { SittingList } from "./SittingList";
import { SittingPane } from "./SittingPane";
import { STANDINGS, shownStanding } from "./sittingRows";

/** Sittings on a page. */
const PAGE_SIZE = 20;

const CHOICES: Choices<SittingStanding | ""> = [
  ["", "every verdict"],
  ...(Object.keys(STANDINGS) as SittingStanding[]).map((one) => [one, STANDINGS[one].toLowerCase()] as const),
];

interface FilterBarProps {
  readonly standing: SittingStanding | undefined;
  readonly onStanding: (standing: SittingStanding | undefined) => void;
  readonly words: string;
  readonly onWords: (words: string) => void;
}

function FilterBar({ standing, onStanding, words, onWords }: FilterBarProps) {
  const id = useId();
  return (
    <div className="logbook-filter row gap-x-4 text-small">
      <FilterChoice
        label="Verdict"
        value={standing ?? ""}
        choices={CHOICES}
        onChoice={(value) => onStanding(value === "" ? undefined : value)}
      />
      <span className="row gap-y-1 max-w-full">
        <label htmlFor={id} className="text-soft">
          Part of a title, tag or note
        </label>
        <input
          id={id}
          type="search"
          className="field"
          value={words}
          onChange={(event) => onWords(event.currentTarget.value)}
        />
      </span>
    </div>
  );
}

/** An empty list in a sentence: nothing there yet, or nothing that the filter lets through. */
const noneWords = ({ standing, words }: { readonly standing: SittingStanding | undefined; readonly words: string }) =>
  standing === undefined && words === ""
    ? "No sittings yet. Choose a sheet under “Sittings” at the top of the page, and sit it."
    : "No sittings match this filter. Clear it to see all sittings.";

/** The sittings of one person, with their verdicts; any of them again. */
export function SittingsView({ current, personId }: { readonly current: CurrentLogbook; readonly personId: string }) {
  const [standing, setStanding] = useState<SittingStanding | undefined>(undefined);
  const [typed, setTyped] = useState("");
  const [chosen, setChosen] = useState<SittingRecord | null>(null);
  const filter = { personId, standing, words: useSettled(typed) };
  const name = `sittings ${JSON.stringify(filter)}`;
  const { answer, problem, first, later, earlier } = usePages(current, name, PAGE_SIZE, (before) =>
    sittingPage(current.logbook, { ...filter, standingOf: shownStanding }, PAGE_SIZE, before),
  );
  const sittings = answer?.sittings ?? [];
  return (
    <div className="grid grid-cols-[minmax(0,1.25fr)_minmax(0,1fr)] items-start gap-6 narrow:grid-cols-[minmax(0,1fr)]">
      <section aria-label="Sittings">
        <FilterBar {...{ standing, words: typed }} onStanding={setStanding} onWords={setTyped} />
        {problem !== null && <p role="alert">{problem}</p>}
        {sittings.length > 0 && <SittingList sittings={sittings} chosenId={chosen?.id ?? null} onChoose={setChosen} />}
        <Pager what="sittings" later={later} earlier={earlier}>
          {answer !== null &&
            (sittings.length === 0 ? noneWords(filter) : `${first + 1} to ${first + sittings.length}, latest first`)}
        </Pager>
      </section>
      <section
        className="logbook-replay plate min-w-0 wide:sticky wide:top-4 wide:max-h-[calc(100dvh-24px)] wide:overflow-y-auto"
        aria-label="Chosen sitting"
        hidden={sittings.length === 0 && chosen === null}
      >
        <SittingPane
          logbook={current.logbook}
          sitting={chosen?.personId === personId ? chosen : null}
          onChanged={(noted) => setChosen((now) => (now?.id === noted.id ? noted : now))}
        />
      </section>
    </div>
  );
}
