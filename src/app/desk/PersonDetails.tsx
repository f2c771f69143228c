import { useMemo } from "react";
import type { Hand } from "../../realdial/sources/handOf";
import { isJobSkill } from "../../records/jobRecord";
import type { LogbookContents } from "../../records/logbookContents";
import type { SittingRecord } from "../../records/records";
import { Select } from "../parts/controls/Select";
import { Lines } from "../parts/Lines";
import type { TableModel } from "../pictures/charts/figureModel";
import type { Chosen } from "./ClassTableView";
import { cellState, masteryWords } from "./cellWords";
import type { NamedSkill } from "./classView";
import { personTables, sittingsTable } from "./personTables";
import { ScrolledTable } from "./ScrolledTable";
import { StateMark } from "./StateMark";
import type { DeskSitting } from "./sittingChecks";
import type { DeskTable } from "./tableOrder";
import { useSittingChecks } from "./useSittingChecks";

/** Who is looked at closely, on which desk. */
export interface DetailsProps {
  readonly chosen: Chosen;
  readonly table: DeskTable;
  readonly skills: readonly NamedSkill[];
  /** The hand that faults and misses are counted of. */
  readonly hand: Hand;
  readonly onSkill: (skill: NamedSkill | null) => void;
}

interface PersonDetailsProps extends DetailsProps {
  readonly contents: LogbookContents;
}

const NO_CHECKS: ReadonlyMap<string, DeskSitting> = new Map();

interface SittingsProps {
  readonly sittings: readonly SittingRecord[];
  readonly contents: LogbookContents;
}

/** What is to be said of each record beside its row. */
function Findings({
  sittings,
  checks,
}: { readonly checks: ReadonlyMap<string, DeskSitting> } & Pick<SittingsProps, "sittings">) {
  const told = sittings.flatMap(({ id }) => {
    const check = checks.get(id);
    return check === undefined || check.sentences.length === 0 ? [] : [{ id, ...check }];
  });
  if (told.length === 0) return null;
  return (
    <div className="text-soft">
      {told.map(({ id, title, record, sentences }) => (
        <details key={id}>
          <summary>
            {title}: {record}
          </summary>
          <Lines of={sentences} />
        </details>
      ))}
    </div>
  );
}

/** Sittings as their checked records tell them. */
function Sittings({ sittings, contents }: SittingsProps) {
  const checks = useSittingChecks(contents, sittings) ?? NO_CHECKS;
  if (sittings.length === 0) return <p className="text-soft">No sitting.</p>;
  return (
    <>
      <ScrolledTable table={sittingsTable(sittings, checks)} />
      <Findings {...{ sittings, checks }} />
    </>
  );
}

function Standing({ chosen, table, skills }: Pick<PersonDetailsProps, "chosen" | "table" | "skills">) {
  const row = table.rows.find(({ person }) => person.id === chosen.personId);
  const shown = skills.filter(({ key }) => chosen.skill === null || chosen.skill.key === key);
  return (
    <ul className="plain">
      {shown.map((skill) => {
        const cell = row?.cells[skills.indexOf(skill)] ?? null;
        return (
          <li key={skill.key}>
            <StateMark state={cellState(cell)} isJob={isJobSkill(skill.skill)} /> {skill.title}
            {cell !== null && `: ${masteryWords(cell.mastery)}`}
          </li>
        );
      })}
    </ul>
  );
}

interface MaybeTableProps {
  readonly table: TableModel | null;
  /** What is said where there is none. */
  readonly none: string;
}

function MaybeTable({ table, none }: MaybeTableProps) {
  return table === null ? <p className="text-soft">{none}</p> : <ScrolledTable table={table} />;
}

/** One person, closely: how far, what was missed, the latest attempts and jobs, sittings and zeroings. */
export function PersonDetails({ chosen, contents, table, skills, hand, onSkill }: PersonDetailsProps) {
  const { personId, skill } = chosen;
  const tables = useMemo(
    () => personTables(contents, personId, skill?.skill ?? null, hand),
    [contents, personId, skill, hand],
  );
  const { faults, attempts, missed, jobs, zeroings } = tables;
  const isOf = (kind: "attempts" | "jobs") => skill === null || isJobSkill(skill.skill) === (kind === "jobs");
  return (
    <div className="desk-details stack gap-5">
      <Select
        className="self-start max-w-full"
        aria-label="Skill looked at"
        value={skill?.key ?? "all"}
        choices={[["all", "all skills"], ...skills.map(({ key, title }) => [key, title] as const)]}
        onChoice={(wanted) => onSkill(skills.find(({ key }) => key === wanted) ?? null)}
      />
      <Standing chosen={chosen} table={table} skills={skills} />
      {isOf("attempts") && attempts !== null && <MaybeTable table={faults} none="No fault in these attempts." />}
      {isOf("attempts") && <MaybeTable table={attempts} none="No attempt." />}
      {isOf("jobs") && jobs !== null && <MaybeTable table={missed} none="Nothing missed in these jobs." />}
      {isOf("jobs") && <MaybeTable table={jobs} none="No job." />}
      <Sittings sittings={tables.sittings} contents={contents} />
      <MaybeTable table={zeroings} none="No zeroing." />
    </div>
  );
}
