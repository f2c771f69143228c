import { JOB_RULES } from "../../../drill/marking/jobRule";
import type { Mastery } from "../../../progress/mastery";
import { practiceOfJob } from "../../../progress/practice";
import type { JobRecord } from "../../../records/jobRecord";
import type { Skill } from "../../../records/skill";
import { countText } from "../../../wording/amountWords";
import type { FigureModel } from "../../pictures/charts/figureModel";
import { missedWord } from "../jobWords";
import { masteryFigure } from "./masteryFigure";
import { openingsFigure } from "./openingsFigure";

/** One skill of jobs of one person. */
export interface JobProgress {
  readonly skill: Skill;
  /** At this skill, oldest first. */
  readonly jobs: readonly JobRecord[];
  /** Over all jobs, not the latest alone. */
  readonly mastery: Mastery;
}

function missedFigure(jobs: readonly JobRecord[]): FigureModel {
  const title = "What was missed";
  const codes = jobs.flatMap(({ missed }) => missed);
  if (codes.length === 0) return { title, sentence: "Nothing was missed.", chart: null, table: null };
  const counts = [...new Set(codes)]
    .map((code) => ({ code, count: codes.filter((one) => one === code).length }))
    .sort((a, b) => b.count - a.count);
  const [most] = counts;
  return {
    title,
    sentence: `Most often: ${missedWord(most?.code ?? "")}, in ${most?.count ?? 0} of ${countText(jobs.length, "job")}.`,
    chart: null,
    table: {
      caption: "Each thing missed, most often first",
      head: ["what", "jobs"],
      rows: counts.map(({ code, count }) => [missedWord(code), `${count}`]),
    },
  };
}

/** The views of a skill of jobs. */
export function jobFigures({ jobs, mastery }: JobProgress): FigureModel[] {
  const practices = jobs.map((job) => ({ ...practiceOfJob(job), help: job.help }));
  const openings = openingsFigure(practices, "jobs");
  const kind = jobs.at(-1)?.kind;
  return [
    kind === undefined ? openings : { ...openings, sentence: `${openings.sentence} ${JOB_RULES[kind]}` },
    missedFigure(jobs),
    masteryFigure(mastery, "job"),
  ];
}
