import { useMemo } from "react";
import { SHIPPED_SHEETS } from "../../drill/sheet/shippedSheets";
import type { ClassTable } from "../../progress/classTable";
import { isJobSkill } from "../../records/jobRecord";
import type { LogbookContents } from "../../records/logbookContents";
import type { SittingRecord } from "../../records/records";
import { ownSheets } from "../keeping/sheets/ownSheets";
import { useAsked } from "../keeping/useLogbook";
import { APP_VERSION } from "../parts/page/appVersion";
import type { Chosen } from "./ClassTableView";
import { cellState, masteryWords } from "./cellWords";
import type { NamedSkill } from "./classView";
import { type PersonTables, personTables, sittingsTable } from "./personTables";
import { ScrolledTable } from "./ScrolledTable";
import { StateMark } from "./StateMark";
import { type DeskSitting, sittingChecks } from "./sittingChecks";

interface PersonDetailsProps {
  readonly chosen: Chosen;
  readonly contents: LogbookContents;
  readonly table: ClassTable;
  readonly skills: readonly NamedSkill[];
  readonly onSkill: (skill: NamedSkill | null) => void;
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
          <ul>
            {sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </details>
      ))}
    </div>
  );
}

/** Sittings as their checked records tell them. */
function Sittings({ sittings, contents }: SittingsProps) {
  const { traces, records } = contents;
  const key = sittings.map(({ id, updatedAt }) => `${id} ${updatedAt}`).join();
  const { answer } = useAsked(key, async () => {
    const names = new Map(records.people.map(({ id, name }) => [id, name]));
    const sheets = [...(await ownSheets()), ...SHIPPED_SHEETS];
    return sittingChecks(sittings, { appVersion: APP_VERSION, traces, names, sheets });
  });
  const checks = answer ?? NO_CHECKS;
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

function Attempts({ tables: { faults, attempts } }: { readonly tables: PersonTables }) {
  if (attempts === null) return <p className="text-soft">No attempt.</p>;
  return (
    <>
      {faults === null ? <p className="text-soft">No fault in these attempts.</p> : <ScrolledTable table={faults} />}
      <ScrolledTable table={attempts} />
    </>
  );
}

function Jobs({ tables: { missed, jobs } }: { readonly tables: PersonTables }) {
  if (jobs === null) return <p className="text-soft">No job.</p>;
  return (
    <>
      {missed === null ? <p className="text-soft">Nothing missed in these jobs.</p> : <ScrolledTable table={missed} />}
      <ScrolledTable table={jobs} />
    </>
  );
}

/** One person, closely: how far, what was missed, the latest attempts and jobs, sittings and zeroings. */
export function PersonDetails({ chosen, contents, table, skills, onSkill }: PersonDetailsProps) {
  const { personId, skill } = chosen;
  const tables = useMemo(() => personTables(contents, personId, skill?.skill ?? null), [contents, personId, skill]);
  const isOf = (kind: "attempts" | "jobs") => skill === null || isJobSkill(skill.skill) === (kind === "jobs");
  return (
    <div className="desk-details stack gap-5">
      <select
        className="field self-start max-w-full"
        aria-label="Skill looked at"
        value={skill?.key ?? "all"}
        onChange={({ currentTarget: { value } }) => onSkill(skills.find(({ key }) => key === value) ?? null)}
      >
        <option value="all">all skills</option>
        {skills.map(({ key, title }) => (
          <option key={key} value={key}>
            {title}
          </option>
        ))}
      </select>
      <Standing chosen={chosen} table={table} skills={skills} />
      {isOf("attempts") && <Attempts tables={tables} />}
      {isOf("jobs") && <Jobs tables={tables} />}
      <Sittings sittings={tables.sittings} contents={contents} />
      {tables.zeroings === null ? <p className="text-soft">No zeroing.</p> : <ScrolledTable table={tables.zeroings} />}
    </div>
  );
}
