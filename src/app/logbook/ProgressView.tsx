import { useMemo, useState } from "react";
import { practiceOfJob } from "../../logbook/practice";
import { bySkill, skillKey } from "../../logbook/skill";
import { toldAttempts, toldJobs, untoldSittings } from "../../logbook/toldTries";
import { recordsOfKind } from "../../logbook/wholeLogbook";
import { knownProfile, shortTitle } from "./attemptRows";
import { Figure } from "./charts/Figure";
import type { CurrentLogbook } from "./currentLogbook";
import { FilterChoice, UntoldNote } from "./FilterChoice";
import { type JobProgress, jobFigures } from "./figures/jobFigures";
import { characteristicFigure } from "./figures/masteryFigure";
import type { SkillProgress } from "./figures/progressFigures";
import { SkillFigures } from "./SkillFigures";
import { useAsked } from "./useLogbook";
import { WhatNextPanel } from "./WhatNextPanel";

/** The latest attempts at a skill, which the views are of: an older hand is another hand. */
const LATEST = 1000;

async function progressOf({ logbook }: CurrentLogbook, personId: string) {
  const untold = await untoldSittings(logbook, personId);
  const attempts = await toldAttempts(logbook, { personId, notOf: untold });
  const declarations = (await recordsOfKind(logbook, "declarations")).filter((one) => one.personId === personId);
  const skills = bySkill(attempts).flatMap(({ skill, attempts: own }): SkillProgress[] => {
    const latest = own.slice(-LATEST);
    const profile = latest[0] === undefined ? null : knownProfile(latest[0]);
    const declaration = declarations.find((one) => skillKey(one) === skillKey(skill));
    return profile === null ? [] : [{ skill, profile, attempts: latest, declaration }];
  });
  const jobs = await toldJobs(logbook, personId, untold);
  const jobSkills = bySkill(jobs.map((job) => ({ ...practiceOfJob(job), job }))).map(({ skill, attempts: own }) => ({
    skill,
    jobs: own.map(({ job }) => job).slice(-LATEST),
    declaration: declarations.find((one) => skillKey(one) === skillKey(skill)),
  }));
  return { personId, untold, attempts, declarations, jobs, choices: [...skills.map(dialed), ...jobSkills.map(worked)] };
}

/** A skill that can be looked at. */
interface Choice {
  readonly key: string;
  readonly title: string;
  readonly count: number;
  readonly progress: SkillProgress | JobProgress;
}

function dialed(progress: SkillProgress): Choice {
  const { skill, profile, attempts } = progress;
  const title = `${shortTitle(profile, skill.profileId)}, ${skill.exercise}`;
  return { key: skillKey(skill), title, count: attempts.length, progress };
}

function worked(progress: JobProgress): Choice {
  const { skill, jobs } = progress;
  const [first] = jobs;
  const profile = first === undefined ? null : knownProfile(first);
  const title = `${shortTitle(profile, skill.profileId)}, ${skill.exercise}`;
  return { key: skillKey(skill), title, count: jobs.length, progress };
}

function JobSkillFigures({ progress }: { readonly progress: JobProgress }) {
  const figures = useMemo(() => jobFigures(progress), [progress]);
  const characteristic = useMemo(characteristicFigure, []);
  return (
    <div className="logbook-figures">
      {[...figures, characteristic].map((figure) => (
        <Figure key={figure.title} figure={figure} />
      ))}
    </div>
  );
}

interface SkillChoiceProps {
  readonly choices: readonly Choice[];
  readonly chosen: Choice;
  readonly onChoice: (key: string) => void;
}

function SkillChoice({ choices, chosen, onChoice }: SkillChoiceProps) {
  return (
    <div className="logbook-filter">
      <FilterChoice
        label="Lock and exercise"
        value={chosen.key}
        choices={choices.map(({ key, title, count }) => [key, `${title} (${count})`] as const)}
        onChoice={onChoice}
      />
      {chosen.count === LATEST && (
        <p>
          The latest {LATEST} {"jobs" in chosen.progress ? "jobs" : "attempts"} count here.
        </p>
      )}
    </div>
  );
}

/** How one person comes on, one lock and exercise at a time. */
export function ProgressView({ current, personId }: { readonly current: CurrentLogbook; readonly personId: string }) {
  const [key, setKey] = useState("");
  const { answer, problem } = useAsked(`progress ${current.version} ${personId}`, () => progressOf(current, personId));
  if (problem !== null) return <p role="alert">{problem}</p>;
  if (answer === null || answer.personId !== personId) return null;
  const { choices, attempts, declarations, jobs, untold } = answer;
  const chosen = choices.find((one) => one.key === key) ?? choices[0];
  if (chosen === undefined) {
    return (
      <>
        <p className="logbook-hint">Dial at the bench, or do a job, first: progress is shown here.</p>
        <UntoldNote untold={untold} />
      </>
    );
  }
  const { progress } = chosen;
  return (
    <>
      <UntoldNote untold={untold} />
      <WhatNextPanel attempts={attempts} declarations={declarations} jobs={jobs} />
      <SkillChoice {...{ choices, chosen, onChoice: setKey }} />
      {"jobs" in progress ? <JobSkillFigures progress={progress} /> : <SkillFigures progress={progress} />}
    </>
  );
}
