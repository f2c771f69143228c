import type { JobRecord } from "../../../records/jobRecord";
import { jobRowOf } from "../../results/jobRows";
import { RecordList, When } from "../list/RecordList";

interface JobListProps {
  readonly jobs: readonly JobRecord[];
  /** Sittings that have not ended: the result of their jobs is shown then. */
  readonly running: ReadonlySet<string>;
  readonly chosenId: string | null;
  readonly onChoose: (job: JobRecord) => void;
}

function Line({ job, isChosen, onChoose }: { job: JobRecord; isChosen: boolean; onChoose: () => void }) {
  const row = jobRowOf(job);
  return (
    <tr>
      <When what="job" day={row.day} clock={row.clock} {...{ isChosen, onChoose }} />
      <td>
        {row.job}
        <small className="block text-fine">{row.lockAndHelp}</small>
        {row.tags !== "" && <small className="block text-fine">{row.tags}</small>}
      </td>
      <td>
        <span className={job.isRight ? "" : "missed font-semibold"}>{row.result}</span>
        <small className="block text-fine">{row.missed}</small>
      </td>
      <td className="whitespace-nowrap">{row.time}</td>
    </tr>
  );
}

/** A job of a sitting that goes on: only that it is saved is shown. */
function UntoldLine({ job }: { readonly job: JobRecord }) {
  const { day, clock, job: what, lockAndHelp } = jobRowOf(job);
  return (
    <tr>
      <th scope="row">
        {day} <b>{clock}</b>
      </th>
      <td>
        {what}, in a sitting
        <small className="block text-fine">{lockAndHelp}</small>
      </td>
      <td colSpan={2}>
        Saved
        <small className="block text-fine">The result is shown after the sitting.</small>
      </td>
    </tr>
  );
}

/** A page of jobs, latest first; each can be looked at. */
export function JobList({ jobs, running, chosenId, onChoose }: JobListProps) {
  return (
    <RecordList what="Jobs" headings={["Job and lock", "Result, and what was missed", "Time"]}>
      {jobs.map((job) =>
        job.sittingId !== undefined && running.has(job.sittingId) ? (
          <UntoldLine key={job.id} job={job} />
        ) : (
          <Line key={job.id} job={job} isChosen={job.id === chosenId} onChoose={() => onChoose(job)} />
        ),
      )}
    </RecordList>
  );
}
