import { useMemo, useState } from "react";
import { allAttempts } from "../../logbook/attemptQueries";
import { practiceOfJob } from "../../logbook/practice";
import type { ProgressMeasure } from "../../logbook/progressMeasure";
import { bySkill, skillKey } from "../../logbook/skill";
import { recordsOfKind } from "../../logbook/wholeLogbook";
import { knownProfile, shortTitle } from "./attemptRows";
import { Figure } from "./charts/Figure";
import type { CurrentLogbook } from "./currentLogbook";
import { bestsFigure } from "./figures/bestsFigure";
import { MEASURE_WORDS, MEASURES } from "./figures/controlFigure";
import { type JobProgress, jobFigures } from "./figures/jobFigures";
import { characteristicFigure } from "./figures/masteryFigure";
import { measureFigures, progressFigures, type SkillProgress } from "./figures/progressFigures";
import { useAsked } from "./useLogbook";
import { WhatNextPanel } from "./WhatNextPanel";

/** The latest attempts at a skill, which the views are of: an older hand is another hand. */
const LATEST = 1000;

async function progressOf({ logbook }: CurrentLogbook, personId: string) {
  const attempts = await allAttempts(logbook, { personId });
  const declarations = (await recordsOfKind(logbook, "declarations")).filter((one) => one.personId === personId);
  const skills = bySkill(attempts).flatMap(({ skill, attempts: own }): SkillProgress[] => {
    const latest = own.slice(-LATEST);
    const profile = latest[0] === undefined ? null : knownProfile(latest[0]);
    const declaration = declarations.find((one) => skillKey(one) === skillKey(skill));
    return profile === null ? [] : [{ skill, profile, attempts: latest, declaration }];
  });
  const jobs = (await recordsOfKind(logbook, "jobs"))
    .filter((one) => one.personId === personId)
    .sort((one, other) => one.startedAt - other.startedAt);
  const jobSkills = bySkill(jobs.map((job) => ({ ...practiceOfJob(job), job }))).map(({ skill, attempts: own }) => ({
    skill,
    jobs: own.map(({ job }) => job).slice(-LATEST),
    declaration: declarations.find((one) => skillKey(one) === skillKey(skill)),
  }));
  return { personId, attempts, declarations, jobs, choices: [...skills.map(dialed), ...jobSkills.map(worked)] };
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

function MeasureFigures({ attempts }: Pick<SkillProgress, "attempts">) {
  const [measure, setMeasure] = useState<ProgressMeasure>("worst-stop");
  const [control, learning] = useMemo(() => measureFigures(attempts, measure), [attempts, measure]);
  return (
    <>
      <Figure figure={control}>
        <select
          className="field"
          aria-label="What is measured, here and in the learning curve"
          value={measure}
          onChange={(event) => setMeasure(MEASURES.find((one) => one === event.currentTarget.value) ?? "worst-stop")}
        >
          {MEASURES.map((one) => (
            <option key={one} value={one}>
              {MEASURE_WORDS[one]}
            </option>
          ))}
        </select>
      </Figure>
      <Figure figure={learning} />
    </>
  );
}

function SkillFigures({ progress }: { readonly progress: SkillProgress }) {
  const figures = useMemo(() => progressFigures(progress), [progress]);
  const bests = useMemo(() => bestsFigure(progress.attempts), [progress]);
  const characteristic = useMemo(characteristicFigure, []);
  return (
    <div className="logbook-figures">
      {figures.map((figure) => (
        <Figure key={figure.title} figure={figure} />
      ))}
      <MeasureFigures attempts={progress.attempts} />
      <Figure figure={characteristic} />
      <Figure figure={bests} />
    </div>
  );
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
      <select
        className="field"
        aria-label="Lock and exercise"
        value={chosen.key}
        onChange={(event) => onChoice(event.currentTarget.value)}
      >
        {choices.map(({ key, title, count }) => (
          <option key={key} value={key}>
            {title} ({count})
          </option>
        ))}
      </select>
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
  const { choices, attempts, declarations, jobs } = answer;
  const chosen = choices.find((one) => one.key === key) ?? choices[0];
  if (chosen === undefined) {
    return <p className="logbook-hint">Dial at the bench, or do a job, first: progress is shown here.</p>;
  }
  const { progress } = chosen;
  return (
    <>
      <WhatNextPanel attempts={attempts} declarations={declarations} jobs={jobs} />
      <SkillChoice {...{ choices, chosen, onChoice: setKey }} />
      {"jobs" in progress ? <JobSkillFigures progress={progress} /> : <SkillFigures progress={progress} />}
    </>
  );
}
