import { type ReactNode, useMemo, useState } from "react";
import type { Hand } from "../../realdial/sources/handOf";
import { Dialog } from "../parts/controls/Dialog";
import { HandChoice } from "../results/HandChoice";
import { ClassPanel } from "./ClassPanel";
import type { Chosen } from "./ClassTableView";
import type { NamedSkill } from "./classView";
import { PeopleNav } from "./PeopleNav";
import type { DetailsProps } from "./PersonDetails";
import type { DeskTable, TableFilter } from "./tableOrder";
import "../parts/workplace.css";
import "./desk.css";

const EVERYONE: TableFilter = { show: "everyone", skill: "all" };

/** What a desk shows at the moment. */
export interface DeskShown {
  readonly table: DeskTable;
  /** Those of the table. */
  readonly skills: readonly NamedSkill[];
}

interface DeskClassProps {
  /** Every skill that anyone practiced. */
  readonly skills: readonly NamedSkill[];
  readonly names: ReadonlyMap<string, string>;
  readonly hands: readonly [Hand, ...Hand[]];
  readonly hand: Hand;
  readonly onHand: (hand: Hand) => void;
  /** The table of some skills; the same one while nothing changes. */
  readonly tableOf: (skills: readonly NamedSkill[]) => DeskTable;
  /** What is shown of one person. */
  readonly details: (props: DetailsProps) => ReactNode;
  /** What comes below the table. */
  readonly below: (shown: DeskShown) => ReactNode;
}

/** The desk of a class, wherever its records are: people by skills, and each of them closely. */
export function DeskClass({ skills: all, names, hands, hand, onHand, tableOf, details, below }: DeskClassProps) {
  const [filter, setFilter] = useState(EVERYONE);
  const [chosen, setChosen] = useState<Chosen | null>(null);
  /** Null for every skill that anyone practiced. */
  const [keys, setKeys] = useState<readonly string[] | null>(null);
  const skills = useMemo(() => {
    const asked = all.filter(({ key }) => keys === null || keys.includes(key));
    return asked.length === 0 ? all : asked;
  }, [all, keys]);
  const table = useMemo(() => tableOf(skills), [tableOf, skills]);
  const isFilterKnown = filter.skill === "all" || skills.some(({ key }) => key === filter.skill);
  return (
    <>
      <HandChoice {...{ hands, hand, onHand }} />
      <ClassPanel
        table={table}
        names={names}
        filter={isFilterKnown ? filter : { ...filter, skill: "all" }}
        onFilter={setFilter}
        all={all}
        asked={skills}
        onAsk={(asked) => setKeys(asked.length === all.length ? null : asked)}
        onChoose={setChosen}
      />
      {below({ table, skills })}
      <Dialog
        title={names.get(chosen?.personId ?? "") ?? "Person"}
        isOpen={chosen !== null}
        onClose={() => setChosen(null)}
      >
        {chosen !== null && <PeopleNav chosen={chosen} table={table} names={names} onChoose={setChosen} />}
        {chosen !== null &&
          details({ chosen, table, skills, hand, onSkill: (skill) => setChosen({ ...chosen, skill }) })}
      </Dialog>
    </>
  );
}
