import { type ReactNode, useMemo } from "react";
import { isJobSkill } from "../../records/jobRecord";
import type { MasteryRule } from "../../records/masteryRule";
import { Figure } from "../pictures/charts/Figure";
import { characteristicFigure } from "../results/figures/characteristicFigure";
import type { NamedSkill } from "./classView";
import { type ReadyList, readyLists } from "./readyLists";
import { StateMark } from "./StateMark";
import type { DeskTable } from "./tableOrder";

interface ReadyProps {
  readonly table: DeskTable;
  readonly skills: readonly NamedSkill[];
  readonly names: ReadonlyMap<string, string>;
}

interface SkillReadyProps {
  readonly title: string;
  readonly isJob: boolean;
  readonly list: ReadyList;
}

/** People in one state, and what each still needs. */
function Wanting({ state, people }: { readonly state: "lapsed" | "not-yet"; readonly people: ReadyList["lapsed"] }) {
  if (people.length === 0) return null;
  return (
    <>
      <dt className="text-ink">
        <StateMark state={state} />
      </dt>
      {people.map(({ name, wanted }) => (
        <dd className="col-2" key={name}>
          {name}: <span className="text-soft">{wanted}</span>
        </dd>
      ))}
    </>
  );
}

function SkillReady({ title, isJob, list }: SkillReadyProps) {
  const { ready, lapsed, notYet, none } = list;
  return (
    <li>
      <h3>
        {title}{" "}
        <small>
          {ready.length} of {ready.length + lapsed.length + notYet.length + none.length} ready
        </small>
      </h3>
      <dl className="facts mt-1 text-small">
        <dt className="text-ink">
          <StateMark state="ready" />
        </dt>
        <dd className="col-2">{ready.length === 0 ? "no one yet" : ready.join(", ")}</dd>
        <Wanting state="lapsed" people={lapsed} />
        <Wanting state="not-yet" people={notYet} />
        {none.length > 0 && (
          <>
            <dt className="text-ink">
              <StateMark state="none" isJob={isJob} />
            </dt>
            <dd className="col-2">{none.join(", ")}</dd>
          </>
        )}
      </dl>
    </li>
  );
}

/** Who is ready in each skill. */
export function ReadyPanel({ table, skills, names }: ReadyProps) {
  const lists = useMemo(() => readyLists(table, names), [table, names]);
  return (
    <section className="card" aria-labelledby="desk-ready">
      <h2 id="desk-ready">Who is ready</h2>
      <p>
        What ready means, and how far to trust it, is explained in the next panel. A practice result is not a
        certificate.
      </p>
      <ul className="plain stack gap-4">
        {skills.map(({ key, title, skill }, i) => {
          const list = lists[i];
          return list && <SkillReady key={key} title={title} isJob={isJobSkill(skill)} list={list} />;
        })}
      </ul>
    </section>
  );
}

/** What ready means by a rule, and how far it can be trusted. @param children - where the rule is chosen */
export function RulePanel({ rule, children }: { readonly rule: MasteryRule; readonly children: ReactNode }) {
  const characteristic = useMemo(() => characteristicFigure(rule), [rule]);
  return <Figure figure={characteristic}>{children}</Figure>;
}
