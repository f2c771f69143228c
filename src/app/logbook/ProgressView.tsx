import { useMemo, useState } from "react";
import { allAttempts } from "../../logbook/attemptQueries";
import type { ProgressMeasure } from "../../logbook/progressMeasure";
import { bySkill, skillKey } from "../../logbook/skill";
import { recordsOfKind } from "../../logbook/wholeLogbook";
import { knownProfile, shortTitle } from "./attemptRows";
import { Figure } from "./charts/Figure";
import type { CurrentLogbook } from "./currentLogbook";
import { bestsFigure } from "./figures/bestsFigure";
import { MEASURE_WORDS, MEASURES } from "./figures/controlFigure";
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
  return { personId, attempts, declarations, jobs, skills };
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

interface SkillChoiceProps {
  readonly skills: readonly SkillProgress[];
  readonly chosen: SkillProgress;
  readonly onChoice: (key: string) => void;
}

function SkillChoice({ skills, chosen, onChoice }: SkillChoiceProps) {
  return (
    <div className="logbook-filter">
      <select
        className="field"
        aria-label="Lock and exercise"
        value={skillKey(chosen.skill)}
        onChange={(event) => onChoice(event.currentTarget.value)}
      >
        {skills.map(({ skill, profile, attempts: own }) => (
          <option key={skillKey(skill)} value={skillKey(skill)}>
            {shortTitle(profile, skill.profileId)}, {skill.exercise} ({own.length})
          </option>
        ))}
      </select>
      {chosen.attempts.length === LATEST && <p>The latest {LATEST} attempts count here.</p>}
    </div>
  );
}

/** How one person comes on, one lock and exercise at a time. */
export function ProgressView({ current, personId }: { readonly current: CurrentLogbook; readonly personId: string }) {
  const [key, setKey] = useState("");
  const { answer, problem } = useAsked(`progress ${current.version} ${personId}`, () => progressOf(current, personId));
  if (problem !== null) return <p role="alert">{problem}</p>;
  if (answer === null || answer.personId !== personId) return null;
  const { skills, attempts, declarations, jobs } = answer;
  const chosen = skills.find(({ skill }) => skillKey(skill) === key) ?? skills[0];
  if (chosen === undefined && jobs.length === 0) {
    return <p className="logbook-hint">Dial at the bench first: progress is shown here.</p>;
  }
  return (
    <>
      <WhatNextPanel attempts={attempts} declarations={declarations} jobs={jobs} />
      {chosen !== undefined && <SkillChoice {...{ skills, chosen, onChoice: setKey }} />}
      {chosen !== undefined && <SkillFigures progress={chosen} />}
    </>
  );
}
