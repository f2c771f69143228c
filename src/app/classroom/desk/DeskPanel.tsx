import { useCallback, useMemo, useState } from "react";
import type * as z from "zod/mini";
import { narrowedTable } from "../../../progress/classTable";
import type { Hand } from "../../../realdial/sources/handOf";
import { MASTERY_RULE } from "../../../records/masteryRule";
import { deskAnswer } from "../../../school/wire/deskWire";
import { type NamedSkill, namedSkills, namesOf } from "../../desk/classView";
import { DeskClass, type DeskShown } from "../../desk/DeskClass";
import { ReadyPanel, RulePanel } from "../../desk/ReadyPanels";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { clockText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import type { OfClass } from "../asking/classProps";
import { ExportList } from "../records/ExportList";
import { TABLE_WORDS } from "../records/exportWords";
import { ServerPerson } from "./ServerPerson";
import { WholeClass } from "./WholeClass";

type Answer = z.infer<typeof deskAnswer>;

/** Every latest try of a table, by which its skills are named. */
const triesOf = ({ rows }: Answer) => rows.flatMap(({ cells }) => cells.flatMap((cell) => cell?.latest ?? []));

interface TableProps extends OfClass {
  readonly answer: Answer;
  readonly onHand: (hand: Hand) => void;
}

function ClassOfServer({ asking, one, answer, onHand }: TableProps) {
  const names = useMemo(
    () =>
      namesOf(
        answer.rows.map(({ person }) => person),
        [],
      ),
    [answer],
  );
  const skills = useMemo(() => namedSkills(triesOf(answer)), [answer]);
  const tableOf = useCallback(
    (wanted: readonly NamedSkill[]) =>
      narrowedTable(
        answer,
        wanted.map(({ skill }) => skill),
      ),
    [answer],
  );
  const [first = answer.hand, ...others] = answer.hands;
  const below = ({ table, skills: shown }: DeskShown) => (
    <>
      <WholeClass asking={asking} one={one} names={names} skills={shown} hand={answer.hand} />
      <div className="tiles-[460px] gap-4 items-start">
        <ReadyPanel table={table} skills={shown} names={names} />
        <RulePanel rule={MASTERY_RULE}>
          <p>The server counts by the usual rule. The rule that you set on a desk with files is not used here.</p>
        </RulePanel>
      </div>
    </>
  );
  return (
    <DeskClass
      skills={skills}
      names={names}
      hands={[first, ...others]}
      hand={answer.hand}
      onHand={onHand}
      tableOf={tableOf}
      details={(props) => <ServerPerson key={props.chosen.personId} asking={asking} {...props} />}
      below={below}
    />
  );
}

/** The class desk, from what the benches of a class sent. */
export function DeskPanel({ asking, one }: OfClass) {
  const [asked, setAsked] = useState<{ readonly hand: Hand | null; readonly times: number }>({ hand: null, times: 0 });
  const query = asked.hand === null ? "" : `?hand=${asked.hand}`;
  const path = `/classes/${one.id}`;
  const table = { ...TABLE_WORDS, what: "class", path: `${path}/desk.csv${query}`, isCsv: true };
  const { answer, problem } = useAsked(`desk ${one.id} ${asked.hand} ${asked.times}`, async () => {
    return { desk: await asking.read(`${path}/desk${query}`, deskAnswer), at: Date.now() };
  });
  return (
    <div className="desk stack gap-5">
      <div className="row">
        <p role="status">
          {answer === null ? "Loading the desk…" : `What the benches sent by ${clockText(answer.at)}.`}
        </p>
        <Button onClick={() => setAsked({ ...asked, times: asked.times + 1 })}>Load it again</Button>
      </div>
      {problem !== null && <Notice className="">{problem}</Notice>}
      {answer !== null && answer.desk.skills.length === 0 && (
        <p className="text-soft">No one in this class has an attempt yet.</p>
      )}
      {answer !== null && answer.desk.skills.length > 0 && (
        <ClassOfServer asking={asking} one={one} answer={answer.desk} onHand={(hand) => setAsked({ ...asked, hand })} />
      )}
      <section className="card" aria-labelledby="class-export">
        <h2 id="class-export">Save the records of the class</h2>
        <p>Of everyone who is in the class now.</p>
        <ExportList asking={asking} path={path} name={one.name} others={[table]} />
      </section>
    </div>
  );
}
