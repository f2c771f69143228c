import { JOB_RULES } from "../../../drill/marking/jobRule";
import type { JobRecord } from "../../../records/jobRecord";
import type { Logbook } from "../../../store/logbook";
import { Lines } from "../../parts/Lines";
import { doubtSentence } from "../../results/doubtWords";
import { againAddress } from "../../results/jobAddress";
import { jobRowOf } from "../../results/jobRows";
import { jobStory } from "../../results/jobSentences";
import { turnedBySentence } from "../../results/sourceWords";
import { RecordNote } from "../notes/RecordNote";

const AGAIN: Readonly<Record<JobRecord["kind"], string>> = {
  change: "Change a combination again",
  trouble: "The same trouble again",
  handover: "Hand over a lock again",
  fitting: "Fit a dial again",
  service: "The same visit again",
  inspection: "Judge another fit",
};

interface JobPaneProps {
  readonly logbook: Logbook;
  readonly job: JobRecord | null;
  readonly onChanged: (job: JobRecord) => void;
}

/** One job: what it came to, point by point, the way to do it again, and what is noted of it. */
export function JobPane({ logbook, job, onChanged }: JobPaneProps) {
  if (job === null) return <p className="py-5 text-soft">Choose a job to look at it.</p>;
  const row = jobRowOf(job);
  const { sentence, points } = jobStory(job);
  return (
    <>
      <section aria-label="Result">
        <h2>
          {row.job}: {row.result.toLowerCase()}
        </h2>
        <p>
          {row.lockAndHelp}, {row.time}. {row.day} {row.clock}.
        </p>
        <p className="mt-3">{sentence}</p>
        {job.sources !== undefined && <p className="text-soft mt-3">{turnedBySentence(job)}</p>}
        <p className="empty:hidden">{doubtSentence(job)}</p>
        {points.length > 0 && <Lines of={points} className="grid gap-3 my-3" />}
        <div className="row mt-4">
          <a className="button" href={againAddress(job)}>
            {AGAIN[job.kind]}
          </a>
        </div>
        <p className="text-soft mt-3">{JOB_RULES[job.kind]} A practice result is not a certificate.</p>
      </section>
      <RecordNote logbook={logbook} kind="jobs" record={job} onChanged={onChanged} />
    </>
  );
}
