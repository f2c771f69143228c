import type { JobNote } from "../../records/job/jobNote";
import type { LogbookWrite } from "../../store/logbookWrite";

/** A job on its way into the logbook. */
export const jobWrite = (personId: string, note: JobNote): LogbookWrite => ({
  kind: "jobs",
  record: { ...note, personId },
});
