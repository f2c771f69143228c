import { classCsv } from "../../progress/csv/classCsv";
import { Button } from "../parts/controls/Button";
import { Check } from "../parts/controls/Check";
import { Select } from "../parts/controls/Select";
import { CsvMarkChoice, useCsvMark } from "../parts/files/CsvMarkChoice";
import { type Chosen, ClassTableView } from "./ClassTableView";
import type { NamedSkill } from "./classView";
import { saveCsv } from "./saveCsv";
import type { DeskTable, TableFilter } from "./tableOrder";

interface FilterProps {
  readonly skills: readonly NamedSkill[];
  readonly filter: TableFilter;
  readonly onFilter: (filter: TableFilter) => void;
}

const SHOWS = [
  ["everyone", "Everyone"],
  ["ready", "Ready"],
  ["not-yet", "Not ready"],
] as const;

function FilterBar({ skills, filter, onFilter }: FilterProps) {
  return (
    <>
      <Select
        aria-label="People shown"
        value={filter.show}
        choices={SHOWS}
        onChoice={(show) => onFilter({ ...filter, show })}
      />
      {filter.show !== "everyone" && (
        <Select
          aria-label="Ready at what"
          value={filter.skill}
          choices={[["all", "at every skill"], ...skills.map(({ key, title }) => [key, `at ${title}`] as const)]}
          onChoice={(skill) => onFilter({ ...filter, skill })}
        />
      )}
    </>
  );
}

interface SkillChoiceProps {
  readonly all: readonly NamedSkill[];
  readonly asked: readonly NamedSkill[];
  readonly onAsk: (keys: readonly string[]) => void;
}

/** The skills that this class needs: who is ready at all of them is ready. */
function SkillChoice({ all, asked, onAsk }: SkillChoiceProps) {
  if (all.length < 2) return null;
  const isAsked = (key: string) => asked.some((one) => one.key === key);
  return (
    <fieldset className="row gap-x-5 gap-y-0 text-small">
      <legend className="text-soft">Skills this class needs</legend>
      {all.map(({ key, title }) => (
        <Check
          key={key}
          isOn={isAsked(key)}
          isDisabled={asked.length === 1 && isAsked(key)}
          onSwitch={(isOn) =>
            onAsk(all.filter((one) => (one.key === key ? isOn : isAsked(one.key))).map((one) => one.key))
          }
        >
          {title}
        </Check>
      ))}
    </fieldset>
  );
}

interface ClassPanelProps extends Omit<FilterProps, "skills">, SkillChoiceProps {
  readonly table: DeskTable;
  readonly names: ReadonlyMap<string, string>;
  readonly onChoose: (chosen: Chosen) => void;
}

/** The table of the class, with what is listed, and its file. */
export function ClassPanel({ table, names, onChoose, filter, onFilter, all, asked, onAsk }: ClassPanelProps) {
  const [mark, setMark] = useCsvMark();
  return (
    <section className="stack" aria-labelledby="desk-class">
      <h2 id="desk-class">People and skills</h2>
      <div className="row">
        <FilterBar skills={asked} filter={filter} onFilter={onFilter} />
        <Button onClick={() => saveCsv("class", classCsv(table), mark)}>Save the table as CSV</Button>
        <CsvMarkChoice mark={mark} onMark={setMark} />
      </div>
      <SkillChoice all={all} asked={asked} onAsk={onAsk} />
      <ClassTableView table={table} skills={asked} names={names} filter={filter} onChoose={onChoose} />
    </section>
  );
}
