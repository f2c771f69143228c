import { useCallback, useMemo, useState } from "react";
import type { Hand } from "../../realdial/sources/handOf";
import { isJobSkill } from "../../records/jobRecord";
import { type ClassView, classView, type NamedSkill, tableOf } from "../desk/classView";
import { DeskClass } from "../desk/DeskClass";
import { GaugePanel } from "../desk/GaugePanel";
import { PersonDetails } from "../desk/PersonDetails";
import { ReadyPanel, RulePanel } from "../desk/ReadyPanels";
import { SittingsPanel } from "../desk/SittingsPanel";
import { useReadinessRule } from "../keeping/readinessRule";
import { useStore } from "../parts/page/useStore";
import { ReadinessSettings } from "../results/ReadinessSettings";
import { ClassDesk } from "./classDesk";
import { DeskFiles } from "./DeskFiles";

function Class({ view }: { readonly view: ClassView }) {
  const [wanted, setWanted] = useState<Hand | null>(null);
  const { names, contents, hands } = view;
  const hand = hands.find((one) => one === wanted) ?? hands[0];
  const [rule] = useReadinessRule();
  const ofSkills = useCallback(
    (skills: readonly NamedSkill[]) => tableOf(view, skills, { rule, now: Date.now(), hand }),
    [view, rule, hand],
  );
  return (
    <DeskClass
      skills={view.skills}
      {...{ names, hands, hand }}
      onHand={setWanted}
      tableOf={ofSkills}
      details={(props) => <PersonDetails {...props} contents={contents} />}
      below={({ table, skills }) => (
        <>
          <SittingsPanel view={view} />
          <div className="tiles-[460px] gap-4 items-start">
            <ReadyPanel table={table} skills={skills} names={names} />
            <RulePanel rule={rule}>
              <ReadinessSettings />
            </RulePanel>
            <GaugePanel view={view} skills={skills.filter(({ skill }) => !isJobSkill(skill))} hand={hand} />
          </div>
        </>
      )}
    />
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
