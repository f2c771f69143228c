import { useMemo } from "react";
import type { ClassTable } from "../../logbook/classTable";
import { isJobSkill } from "../../logbook/jobRecord";
import { MASTERY_RULE } from "../../logbook/mastery";
import { Figure } from "../logbook/charts/Figure";
import { characteristicFigure } from "../logbook/figures/masteryFigure";
import type { NamedSkill } from "./classView";
import { type ReadyList, readyLists } from "./readyLists";
import { StateMark } from "./StateMark";

interface ReadyProps {
  readonly table: ClassTable;
  readonly skills: readonly NamedSkill[];
  readonly names: ReadonlyMap<string, string>;
}

interface SkillReadyProps {
  readonly title: string;
  readonly isJob: boolean;
  readonly list: ReadyList;
}

function SkillReady({ title, isJob, list }: SkillReadyProps) {
  const { ready, notYet, none } = list;
  return (
    <li>
      <h3>
        {title}{" "}
        <small className="desk-share">
          {ready.length} of {ready.length + notYet.length + none.length} ready
        </small>
      </h3>
      <dl>
        <dt>
          <StateMark state="ready" />
        </dt>
        <dd>{ready.length === 0 ? "nobody yet" : ready.join(", ")}</dd>
        {notYet.length > 0 && (
          <>
            <dt>
              <StateMark state="not-yet" />
            </dt>
            {notYet.map(({ name, wanted }) => (
              <dd key={name}>
                {name}: <span className="desk-soft">{wanted}</span>
              </dd>
            ))}
          </>
        )}
        {none.length > 0 && (
          <>
            <dt>
              <StateMark state="none" isJob={isJob} />
            </dt>
            <dd>{none.join(", ")}</dd>
          </>
        )}
      </dl>
    </li>
  );
}

const inTen = (rate: number) => `${Math.round(10 * rate)} in 10`;

const READY_MEANS = `Ready means shown: the first-time openings, or the jobs right the first time, fit someone who misses ${inTen(MASTERY_RULE.adequateFailureRate)} far better than someone who misses ${inTen(MASTERY_RULE.inadequateFailureRate)}, by a learning CUSUM (LC-CUSUM) over the attempts or the jobs. Once shown it stays shown. It is a practice result, not a certificate.`;

/** Who is ready in each skill, what that means, and how far it can be trusted. */
export function ReadyPanels({ table, skills, names }: ReadyProps) {
  const lists = useMemo(() => readyLists(table, names), [table, names]);
  const characteristic = useMemo(characteristicFigure, []);
  return (
    <>
      <section className="figure desk-ready" aria-labelledby="desk-ready">
        <h2 id="desk-ready">Who is ready</h2>
        <p className="figure-sentence">{READY_MEANS}</p>
        <ul>
          {skills.map(({ key, title, skill }, i) => {
            const list = lists[i];
            return list && <SkillReady key={key} title={title} isJob={isJobSkill(skill)} list={list} />;
          })}
        </ul>
      </section>
      <Figure figure={characteristic} />
    </>
  );
}
