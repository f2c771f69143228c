import { useEffect, useRef, useState } from "react";
import type { AttemptRecord } from "../../../records/attemptRecord";
import type { AttemptFilter } from "../../../store/attemptQueries";
import { tagsOfAttempts } from "../../../store/attemptTags";
import { untoldSittings } from "../../../store/toldTries";
import { countText } from "../../../wording/amountWords";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { useAsked } from "../../keeping/useLogbook";
import { Check } from "../../parts/controls/Check";
import { FilterChoice, LockFilter, UntoldNote } from "../list/FilterChoice";
import { ONE_COLUMN } from "../list/oneColumn";
import { RecordActs } from "../list/RecordActs";
import { AttemptList } from "./AttemptList";
import { ReplayPane } from "./ReplayPane";
import { useAttemptWindow } from "./useAttemptWindow";
import { ZeroingList } from "./ZeroingList";

/** What the list is narrowed by. */
type Choice = Pick<AttemptFilter, "profileId" | "onlyMisses" | "tag">;

interface FilterBarProps {
  readonly choice: Choice;
  readonly onChoice: (choice: Choice) => void;
  /** Tags that there are. */
  readonly tags: readonly string[];
  /** How many attempts the filter finds, or null before that is known. */
  readonly count: number | null;
}

const shownText = (count: number) => (count === 0 ? "No attempts." : `${countText(count, "attempt")}, latest first`);

function FilterBar({ choice, onChoice, tags, count }: FilterBarProps) {
  const { profileId, onlyMisses = false, tag = "" } = choice;
  return (
    <div className="logbook-filter row gap-x-4 text-small">
      <LockFilter profileId={profileId} onProfile={(id) => onChoice({ ...choice, profileId: id })} />
      {(tags.length > 0 || tag !== "") && (
        <FilterChoice
          label="Tag"
          value={tag}
          choices={[
            ["", "any or none"],
            ...[...new Set([...tags, ...(tag === "" ? [] : [tag])])].map((one) => [one, one] as const),
          ]}
          onChoice={(one) => onChoice({ ...choice, tag: one === "" ? undefined : one })}
        />
      )}
      <Check isOn={onlyMisses} onSwitch={(isOn) => onChoice({ ...choice, onlyMisses: isOn })}>
        misses only
      </Check>
      <p role="status">{count !== null && shownText(count)}</p>
    </div>
  );
}

/**
 * Tags of a person's attempts, and sittings under way whose misses are not told; null before they are known.
 *
 * @param isWanted - whether to ask: the first rows do not wait for what stands beside them
 */
function useBeside({ logbook, version }: CurrentLogbook, personId: string, isWanted: boolean) {
  return useAsked(`beside attempts ${version} ${personId} ${isWanted}`, async () => {
    if (!isWanted) return null;
    const [tags, untold] = await Promise.all([tagsOfAttempts(logbook, personId), untoldSittings(logbook, personId)]);
    return { tags, untold };
  }).answer;
}

const NOTHING_BESIDE = { tags: [], untold: [] } as const;

/** An attempt as it is noted now, where it is the one that is chosen. */
const keptOf = (chosen: AttemptRecord | null, noted: AttemptRecord) => (chosen?.id === noted.id ? noted : chosen);

/** The chosen attempt, while it is this person's. */
const ownOf = (chosen: AttemptRecord | null, personId: string) => (chosen?.personId === personId ? chosen : null);

/** The attempts and zeroings of one person, and any of the attempts again. */
export function AttemptsView({ current, personId }: { readonly current: CurrentLogbook; readonly personId: string }) {
  const [choice, setChoice] = useState<Choice>({});
  const [chosen, setChosen] = useState<AttemptRecord | null>(null);
  const own = ownOf(chosen, personId);
  const pane = useRef<HTMLElement>(null);
  const choose = (attempt: AttemptRecord) => {
    setChosen(attempt);
    // Where the replay lies below the list, it comes into view.
    if (matchMedia(ONE_COLUMN).matches) pane.current?.scrollIntoView({ block: "start" });
  };
  const [areRowsKnown, setRowsKnown] = useState(false);
  const beside = useBeside(current, personId, areRowsKnown);
  const { tags, untold } = beside ?? NOTHING_BESIDE;
  // Which tries of a sitting under way are misses is not told, not by their being in a list either.
  const onlyMisses = choice.onlyMisses === true && beside !== null;
  const notOf = onlyMisses && untold.length > 0 ? untold : undefined;
  const attempts = useAttemptWindow(current, { personId, ...choice, onlyMisses, notOf });
  const { count, problem } = attempts;
  useEffect(() => {
    if (count !== null) setRowsKnown(true);
  }, [count]);
  return (
    <div className="grid grid-cols-[minmax(0,1.25fr)_minmax(0,1fr)] items-start gap-6 narrow:grid-cols-[minmax(0,1fr)]">
      <section aria-label="Attempts">
        <FilterBar {...{ choice, tags, count }} onChoice={setChoice} />
        {notOf !== undefined && <UntoldNote untold={notOf} />}
        {problem !== null && <p role="alert">{problem}</p>}
        {count !== null && count > 0 && (
          <AttemptList attempts={attempts} count={count} chosenId={chosen?.id ?? null} onChoose={choose} />
        )}
        {areRowsKnown && <ZeroingList current={current} personId={personId} />}
      </section>
      <section
        ref={pane}
        className="logbook-replay plate min-w-0 wide:sticky wide:top-4 wide:max-h-[calc(100dvh-24px)] wide:overflow-y-auto"
        aria-label="Replay"
      >
        <ReplayPane
          logbook={current.logbook}
          attempt={own}
          onChanged={(noted) => setChosen((now) => keptOf(now, noted))}
        />
        {own !== null && <RecordActs current={current} kind="attempts" record={own} onGone={() => setChosen(null)} />}
      </section>
    </div>
  );
}
