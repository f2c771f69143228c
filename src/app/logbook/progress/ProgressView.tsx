import { useMemo, useState } from "react";
import { declarationFor, mastery } from "../../../progress/mastery";
import { handsTried, jobsOfHand, ofHand } from "../../../progress/oneHand";
import { practiceOfJob, practicesOf } from "../../../progress/practice";
import type { CountedTry } from "../../../progress/readiness";
import type { Hand } from "../../../realdial/sources/handOf";
import type { MasteryRule } from "../../../records/masteryRule";
import { bySkill, type Skill, skillKey } from "../../../records/skill";
import { toldAttempts, toldJobs, untoldSittings } from "../../../store/toldTries";
import { recordsOfKind } from "../../../store/wholeLogbook";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { useReadinessRule } from "../../keeping/readinessRule";
import { useAsked } from "../../keeping/useLogbook";
import { Figure } from "../../pictures/charts/Figure";
import { knownProfile } from "../../results/attemptRows";
import { characteristicFigure } from "../../results/figures/characteristicFigure";
import { type JobProgress, jobFigures } from "../../results/figures/jobFigures";
import type { SkillProgress } from "../../results/figures/progressFigures";
import { HandChoice } from "../../results/HandChoice";
import { ReadinessSettings } from "../../results/ReadinessSettings";
import { skillTitle } from "../../results/skillTitle";
import { FilterChoice, UntoldNote } from "../list/FilterChoice";
import { CarriesOver } from "./CarriesOver";
import { SkillFigures } from "./SkillFigures";
import { WhatNextPanel } from "./WhatNextPanel";

/** The latest attempts at a skill, which the views are of: an older hand is another hand. */
const LATEST = 1000;

async function progressOf({ logbook }: CurrentLogbook, personId: string, rule: MasteryRule, wanted: Hand | null) {
  const untold = await untoldSittings(logbook, personId);
  const attempts = await toldAttempts(logbook, { personId, notOf: untold });
  const jobs = await toldJobs(logbook, personId, untold);
  // Figures are of one hand at a time: of the one used last, until another is chosen.
  const hands = handsTried(practicesOf(attempts, jobs));
  const hand = hands.find((one) => one === wanted) ?? hands[0];
  const declarations = (await recordsOfKind(logbook, "declarations")).filter((one) => one.personId === personId);
  const now = Date.now();
  const masteryOf = (skill: Skill, tries: readonly CountedTry[]) =>
    mastery(skill, tries, { rule, now, declaration: declarationFor(declarations, skill, rule, hand) });
  const skills = bySkill(ofHand(attempts, hand)).flatMap(({ skill, attempts: own }): SkillProgress[] => {
    const latest = own.slice(-LATEST);
    const profile = latest[0] === undefined ? null : knownProfile(latest[0]);
    return profile === null ? [] : [{ skill, profile, attempts: latest, mastery: masteryOf(skill, own) }];
  });
  const jobSkills = bySkill(jobsOfHand(jobs, hand).map((job) => ({ ...practiceOfJob(job), job }))).map(
    ({ skill, attempts: own }) => ({
      skill,
      jobs: own.map(({ job }) => job).slice(-LATEST),
      mastery: masteryOf(skill, own),
    }),
  );
  return {
    personId,
    untold,
    attempts,
    hands,
    hand,
    declarations,
    jobs,
    choices: [...skills, ...jobSkills].map(choiceOf),
  };
}

/** A skill that can be looked at. */
interface Choice {
  readonly key: string;
  readonly title: string;
  readonly count: number;
  readonly progress: SkillProgress | JobProgress;
}

function choiceOf(progress: SkillProgress | JobProgress): Choice {
  const { skill } = progress;
  const tries = "jobs" in progress ? progress.jobs : progress.attempts;
  const profile = tries[0] === undefined ? null : knownProfile(tries[0]);
  return { key: skillKey(skill), title: skillTitle(profile, skill), count: tries.length, progress };
}

function JobSkillFigures({ progress }: { readonly progress: JobProgress }) {
  const figures = useMemo(() => jobFigures(progress), [progress]);
  const characteristic = useMemo(() => characteristicFigure(progress.mastery.rule), [progress]);
  return (
    <div className="tiles-[420px] gap-4">
      {figures.map((figure) => (
        <Figure key={figure.title} figure={figure} />
      ))}
      <Figure figure={characteristic}>
        <ReadinessSettings />
      </Figure>
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
    <div className="logbook-filter row gap-x-4 text-small">
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
  const [wanted, setWanted] = useState<Hand | null>(null);
  const [rule] = useReadinessRule();
  const { answer, problem } = useAsked(
    `progress ${current.version} ${personId} ${JSON.stringify(rule)} ${wanted}`,
    () => progressOf(current, personId, rule, wanted),
  );
  if (problem !== null) return <p role="alert">{problem}</p>;
  if (answer === null || answer.personId !== personId) return null;
  const { choices, attempts, declarations, jobs, untold, hands, hand } = answer;
  const chosen = choices.find((one) => one.key === key) ?? choices[0];
  if (chosen === undefined) {
    return (
      <>
        <p className="py-5 text-soft">
          No attempt and no job yet. Dial on the bench, or do a job; your progress is shown here.
        </p>
        <UntoldNote untold={untold} />
      </>
    );
  }
  const { progress } = chosen;
  return (
    <>
      <UntoldNote untold={untold} />
      <HandChoice {...{ hands, hand, onHand: setWanted }} />
      <WhatNextPanel {...{ attempts, declarations, jobs, rule, hand }} />
      <SkillChoice {...{ choices, chosen, onChoice: setKey }} />
      {!("jobs" in progress) && hands.length > 1 && (
        <CarriesOver attempts={attempts.filter((one) => skillKey(one) === skillKey(progress.skill))} />
      )}
      {"jobs" in progress ? <JobSkillFigures progress={progress} /> : <SkillFigures progress={progress} />}
    </>
  );
}
