import { useMemo, useState } from "react";
import type { Hand } from "../../../realdial/sources/handOf";
import { isJobSkill } from "../../../records/jobRecord";
import type { LogbookContents } from "../../../records/logbookContents";
import type { NamedSkill } from "../../desk/classView";
import { GaugePanel } from "../../desk/GaugePanel";
import { SittingsPanel } from "../../desk/SittingsPanel";
import { Button } from "../../parts/controls/Button";
import { ToldLine, useDoing } from "../../parts/Told";
import type { OfClass } from "../asking/classProps";
import { readRecords } from "./readRecords";

interface WholeProps extends OfClass {
  readonly names: ReadonlyMap<string, string>;
  readonly skills: readonly NamedSkill[];
  readonly hand: Hand;
}

/** What needs every record of a class: its sittings, and how much stops vary. Loaded when it is asked for. */
export function WholeClass({ asking, one, names, skills, hand }: WholeProps) {
  const [contents, setContents] = useState<LogbookContents | null>(null);
  const { told, act, say } = useDoing();
  const load = () =>
    act(async () => {
      say("Loading every record of the class. A large class takes a minute.");
      setContents(await readRecords(asking, `/classes/${one.id}`));
      return "Every record of the class is loaded.";
    });
  const view = useMemo(() => contents && { contents, names }, [contents, names]);
  return (
    <>
      <div className="row">
        <Button onClick={load}>{contents === null ? "Load sittings and stop study" : "Load the records again"}</Button>
        {contents === null && (
          <span className="text-small text-soft">They need every record of the class, with its motion.</span>
        )}
      </div>
      <ToldLine told={told} />
      {view !== null && (
        <>
          <SittingsPanel view={view} />
          <GaugePanel view={view} skills={skills.filter(({ skill }) => !isJobSkill(skill))} hand={hand} />
        </>
      )}
    </>
  );
}
