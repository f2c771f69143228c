import { useRef, useState } from "react";
import { JOB_KINDS, type JobKind, type JobRecord } from "../../../records/jobRecord";
import { type JobFilter, jobPage } from "../../../store/jobQueries";
import { untoldSittings } from "../../../store/toldTries";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { Check } from "../../parts/controls/Check";
import type { Choices } from "../../parts/controls/Select";
import { JOB_WORDS } from "../../results/jobWords";
import { FilterChoice, LockFilter, UntoldNote } from "../list/FilterChoice";
import { ONE_COLUMN } from "../list/oneColumn";
import { RecordActs } from "../list/RecordActs";
import { Pager } from "../list/RecordList";
import { usePages } from "../list/usePages";
import { JobList } from "./JobList";
import { JobPane } from "./JobPane";

/** Jobs on a page. */
const PAGE_SIZE = 20;

type Choice = Omit<JobFilter, "personId" | "notOf">;

const KINDS: Choices<JobKind | ""> = [
  ["", "every job"],
  ...JOB_KINDS.map((one) => [one, JOB_WORDS[one].toLowerCase()] as const),
];

interface FilterBarProps {
  readonly choice: Choice;
  readonly onChoice: (choice: Choice) => void;
}

function FilterBar({ choice, onChoice }: FilterBarProps) {
  const { kind = "", profileId, onlyMisses = false } = choice;
  return (
    <div className="logbook-filter row gap-x-4 text-small">
      <FilterChoice
        label="Job"
        value={kind}
        choices={KINDS}
        onChoice={(value) => onChoice({ ...choice, kind: value === "" ? undefined : value })}
      />
      <LockFilter profileId={profileId} onProfile={(id) => onChoice({ ...choice, profileId: id })} />
      <Check isOn={onlyMisses} onSwitch={(isOn) => onChoice({ ...choice, onlyMisses: isOn })}>
        misses only
      </Check>
    </div>
  );
}

const useJobs = (current: CurrentLogbook, filter: JobFilter) =>
  usePages(current, `jobs ${JSON.stringify(filter)}`, PAGE_SIZE, async (before) => {
    const running = await untoldSittings(current.logbook, filter.personId);
    // Which tries of a sitting under way are misses is not told, not by their being in a list either.
    const notOf = filter.onlyMisses === true ? running : [];
    const page = await jobPage(current.logbook, { ...filter, notOf }, { size: PAGE_SIZE, before });
    return { ...page, notOf, running: new Set(running) };
  });

const NO_JOBS =
  "No jobs yet. Fit a dial under “Fitting”, or change a combination, find trouble or hand over a door under “Handover”.";

function placeWords({ answer, first }: Pick<ReturnType<typeof useJobs>, "answer" | "first">, isFiltered: boolean) {
  if (answer === null) return "";
  const { length } = answer.records;
  if (length === 0) return isFiltered ? "No jobs match this filter. Clear it to see all jobs." : NO_JOBS;
  return `${first + 1} to ${first + length}, latest first`;
}

/** The jobs of one person: changes, trouble, handovers and fittings, and any of them closely. */
export function JobsView({ current, personId }: { readonly current: CurrentLogbook; readonly personId: string }) {
  const [choice, setChoice] = useState<Choice>({});
  const [chosen, setChosen] = useState<JobRecord | null>(null);
  const pane = useRef<HTMLElement>(null);
  const jobs = useJobs(current, { ...choice, personId });
  const { answer, problem, later, earlier } = jobs;
  const isEmpty = answer?.records.length === 0;
  const choose = (job: JobRecord) => {
    setChosen(job);
    if (matchMedia(ONE_COLUMN).matches) pane.current?.scrollIntoView({ block: "start" });
  };
  return (
    <div className="grid grid-cols-[minmax(0,1.25fr)_minmax(0,1fr)] items-start gap-6 narrow:grid-cols-[minmax(0,1fr)]">
      <section aria-label="Jobs">
        <FilterBar choice={choice} onChoice={setChoice} />
        {answer !== null && <UntoldNote untold={answer.notOf} />}
        {problem !== null && <p role="alert">{problem}</p>}
        {answer !== null && answer.records.length > 0 && (
          <JobList jobs={answer.records} running={answer.running} chosenId={chosen?.id ?? null} onChoose={choose} />
        )}
        <Pager what="jobs" later={later} earlier={earlier}>
          {placeWords(jobs, Object.values(choice).some(Boolean))}
        </Pager>
      </section>
      <section
        ref={pane}
        className="logbook-replay plate min-w-0 wide:sticky wide:top-4 wide:max-h-[calc(100dvh-24px)] wide:overflow-y-auto"
        aria-label="Chosen job"
        hidden={isEmpty && chosen === null}
      >
        <JobPane
          logbook={current.logbook}
          job={chosen?.personId === personId ? chosen : null}
          onChanged={(noted) => setChosen((now) => (now?.id === noted.id ? noted : now))}
        />
        {chosen?.personId === personId && (
          <RecordActs current={current} kind="jobs" record={chosen} onGone={() => setChosen(null)} />
        )}
      </section>
    </div>
  );
}
