import { useMemo, useState } from "react";
import type { Hand } from "../../realdial/sources/handOf";
import { isJobSkill } from "../../records/jobRecord";
import { useReadinessRule } from "../keeping/readinessRule";
import { Dialog } from "../parts/controls/Dialog";
import { useStore } from "../parts/page/useStore";
import { HandChoice } from "../results/HandChoice";
import { ClassPanel } from "./ClassPanel";
import type { Chosen } from "./ClassTableView";
import { ClassDesk } from "./classDesk";
import { type ClassView, classView, tableOf } from "./classView";
import { DeskFiles } from "./DeskFiles";
import { GaugePanel } from "./GaugePanel";
import { PeopleNav } from "./PeopleNav";
import { PersonDetails } from "./PersonDetails";
import { ReadyPanels } from "./ReadyPanels";
import { SittingsPanel } from "./SittingsPanel";
import type { TableFilter } from "./tableOrder";
import "../parts/workplace.css";
import "./desk.css";

const EVERYONE: TableFilter = { show: "everyone", skill: "all" };

function Class({ view }: { readonly view: ClassView }) {
  const [filter, setFilter] = useState(EVERYONE);
  const [chosen, setChosen] = useState<Chosen | null>(null);
  /** Null for every skill that anyone practiced. */
  const [keys, setKeys] = useState<readonly string[] | null>(null);
  const [wanted, setWanted] = useState<Hand | null>(null);
  const { skills: all, names, contents, hands } = view;
  const hand = hands.find((one) => one === wanted) ?? hands[0];
  const skills = useMemo(() => {
    const asked = all.filter(({ key }) => keys === null || keys.includes(key));
    return asked.length === 0 ? all : asked;
  }, [all, keys]);
  const [rule] = useReadinessRule();
  const table = useMemo(() => tableOf(view, skills, { rule, now: Date.now(), hand }), [view, skills, rule, hand]);
  const isFilterKnown = filter.skill === "all" || skills.some(({ key }) => key === filter.skill);
  return (
    <>
      <HandChoice {...{ hands, hand, onHand: setWanted }} />
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
      <SittingsPanel view={view} />
      <div className="tiles-[460px] gap-4 items-start">
        <ReadyPanels table={table} skills={skills} names={names} />
        <GaugePanel view={view} skills={skills.filter(({ skill }) => !isJobSkill(skill))} hand={hand} />
      </div>
      <Dialog
        title={names.get(chosen?.personId ?? "") ?? "Person"}
        isOpen={chosen !== null}
        onClose={() => setChosen(null)}
      >
        {chosen !== null && <PeopleNav chosen={chosen} table={table} names={names} onChoose={setChosen} />}
        {chosen !== null && (
          <PersonDetails
            chosen={chosen}
            contents={contents}
            hand={hand}
            table={table}
            skills={skills}
            onSkill={(skill) => setChosen({ ...chosen, skill })}
          />
        )}
      </Dialog>
    </>
  );
}

/** One desk a tab: a look at another page does not clear it, closing the tab does. */
const desk = new ClassDesk();

/** The instructor's desk: a class from the logbooks that its people export. */
export function DeskScreen() {
  const { files } = useStore(desk);
  const view = useMemo(() => classView(files), [files]);
  return (
    <main className="desk page">
      <h1 className="visually-hidden" tabIndex={-1}>
        Class desk
      </h1>
      <DeskFiles desk={desk} view={view} />
      {files.length > 0 && view.skills.length === 0 && (
        <p className="py-5 text-soft">No one in these logbooks has an attempt yet.</p>
      )}
      {view.skills.length > 0 && <Class view={view} />}
    </main>
  );
}
