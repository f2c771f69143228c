import { type CsvCell, csvText } from "./csvText";
import type { JobRecord } from "./jobRecord";
import type { LogbookContents } from "./logbookContents";

const HEADER = ["id", "started", "person", "profile", "job", "help", "right", "duration_s", "missed", "tags", "note"];

function row(job: JobRecord, name: string): CsvCell[] {
  return [
    job.id,
    new Date(job.startedAt).toISOString(),
    name,
    job.profileId,
    job.kind,
    job.help,
    job.isRight ? 1 : 0,
    Number((job.duration_ms / 1000).toFixed(3)),
    job.missed.join("; "),
    job.tags.join("; "),
    job.note ?? "",
  ];
}

/** Jobs as CSV, one a row, in the order they are kept. */
export function jobsCsv({ records }: LogbookContents): string {
  const names = new Map(records.people.map(({ id, name }) => [id, name]));
  return csvText(
    HEADER,
    records.jobs.map((job) => row(job, names.get(job.personId) ?? "")),
  );
}
