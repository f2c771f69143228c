import { useState } from "react";
import { CELL_TYPES } from "../../../service/batteries";
import { LUBRICANTS } from "../../../service/papers";
import { LUBRICATED_PLACES } from "../../../service/servicedLock";
import { SERVICE } from "../../../service/serviceValues";
import { instrumentsFor, looksFor, QUESTIONS, type VisitAct } from "../../../service/visitAct";
import { Button } from "../../parts/controls/Button";
import { Select } from "../../parts/controls/Select";
import { Fold } from "../../parts/Fold";
import { CautionLine } from "../handover/parts/CautionLine";
import { actLabel, PLACE_WORDS } from "./visitActWords";
import type { VisitSession } from "./visitSession";
import { GROUP_CAUTIONS } from "./visitWords";

export interface VisitProps {
  readonly session: VisitSession;
}

interface GroupProps extends VisitProps {
  readonly title: string;
  /** What can hurt at this step. */
  readonly caution?: string;
  readonly acts: readonly VisitAct[];
  /** Whether what an act showed stands in view above, but on a phone. */
  readonly isBelowDoor?: boolean;
}

interface SaidHereProps extends VisitProps {
  /** Whether an act was made here. */
  readonly isHere: (act: VisitAct) => boolean;
  readonly className?: string;
}

/** What the last act showed, beside the button that was pressed and folded with it; it is heard from the door. */
export function SaidHere({ session, isHere, className = "" }: SaidHereProps) {
  const last = session.tried.at(-1);
  if (last === undefined || !isHere(last)) return null;
  return (
    <p className={`text-small font-semibold ${className}`} aria-hidden="true">
      {session.log[0]}
    </p>
  );
}

function Group({ session, title, caution, acts, isBelowDoor = false }: GroupProps) {
  const labels = acts.map(actLabel);
  return (
    <section className="mt-3" aria-label={title}>
      <Fold title={<strong className="text-small">{title}</strong>}>
        <div className="stack gap-2">
          {caution !== undefined && <CautionLine>{caution}</CautionLine>}
          <div className="row">
            {acts.map((act) => (
              <Button key={actLabel(act)} className="slim" onClick={() => session.act(act)}>
                {actLabel(act)}
              </Button>
            ))}
          </div>
          <SaidHere
            session={session}
            isHere={(act) => labels.includes(actLabel(act))}
            className={isBelowDoor ? "hidden phone:block" : ""}
          />
        </div>
      </Fold>
    </section>
  );
}

const CHANGES: readonly VisitAct[] = [
  { type: "ring.cleaned" },
  { type: "paint.removed" },
  { type: "bolt.wiped" },
  { type: "ring.centered" },
  { type: "key.replaced" },
  { type: "bearing.replaced" },
];

/** What a technician asks, looks at and measures. */
export function InspectActs({ session }: VisitProps) {
  const { kind } = session.visit.task.lock;
  const isElectronic = kind === "electronic";
  return (
    <>
      <Group
        session={session}
        isBelowDoor
        title="Ask the holder"
        acts={QUESTIONS.map((question) => ({ type: "asked", question }))}
      />
      <Group
        session={session}
        isBelowDoor
        title="Door and cover"
        caution={isElectronic ? `${GROUP_CAUTIONS.door} ${GROUP_CAUTIONS.strap}` : GROUP_CAUTIONS.door}
        acts={[
          { type: "door.opened" },
          { type: "door.held" },
          ...(isElectronic ? [{ type: "strap.worn" } as const] : []),
          { type: "cover.taken" },
          { type: "cover.put" },
          { type: "door.shut" },
        ]}
      />
      <Group
        session={session}
        isBelowDoor
        title="Prove, look and measure"
        caution={GROUP_CAUTIONS.bolt}
        acts={[
          { type: "tried" },
          ...looksFor(kind).map((at) => ({ type: "looked", at }) as const),
          ...instrumentsFor(kind).map((one) => ({ type: "measured", with: one }) as const),
        ]}
      />
    </>
  );
}

function Lubricate({ session }: VisitProps) {
  const [at, setPlace] = useState<(typeof LUBRICATED_PLACES)[number]>("bearing");
  const [what, setWhat] = useState<(typeof LUBRICANTS)[number]>("graphite");
  const places = LUBRICATED_PLACES.filter((one) => one !== "wheels" || session.visit.task.lock.kind === "wheel-pack");
  return (
    <section className="mt-3" aria-label="Lubricate">
      <Fold title={<strong className="text-small">Lubricate</strong>}>
        <div className="stack gap-2">
          <CautionLine>{GROUP_CAUTIONS.lubricate}</CautionLine>
          <div className="row">
            <Select
              aria-label="Lubricate where"
              value={at}
              choices={places.map((one) => [one, PLACE_WORDS[one]] as const)}
              onChoice={setPlace}
            />
            <Select
              aria-label="Lubricate with"
              value={what}
              choices={LUBRICANTS.map((one) => [one, one] as const)}
              onChoice={setWhat}
            />
            <Button className="slim" onClick={() => session.act({ type: "lubricated", at, with: what })}>
              Lubricate
            </Button>
          </div>
          <SaidHere session={session} isHere={({ type }) => type === "lubricated"} />
        </div>
      </Fold>
    </section>
  );
}

function Batteries({ session }: VisitProps) {
  const [cells, setCells] = useState<(typeof CELL_TYPES)[number]>("lithium");
  return (
    <section className="mt-3" aria-label="New cells">
      <Fold title={<strong className="text-small">New cells</strong>}>
        <div className="stack gap-2">
          <CautionLine>{GROUP_CAUTIONS.cells}</CautionLine>
          <div className="row">
            <Select
              aria-label="Type of new cells"
              value={cells}
              choices={CELL_TYPES.map((one) => [one, one] as const)}
              onChoice={setCells}
            />
            <Button className="slim" onClick={() => session.act({ type: "batteries.replaced", which: "set", cells })}>
              Replace all four cells
            </Button>
            <Button className="slim" onClick={() => session.act({ type: "batteries.replaced", which: "one", cells })}>
              Replace one cell
            </Button>
          </div>
          <SaidHere session={session} isHere={({ type }) => type === "batteries.replaced"} />
        </div>
      </Fold>
    </section>
  );
}

/** What changes something in the lock. To leave it alone, do none of it. */
export function ChangeActs({ session }: VisitProps) {
  return (
    <section className="panel stack" aria-label="Change something, or leave it alone">
      <h2>Change something, or leave it alone</h2>
      <Group session={session} title="Clean, center and replace" caution={GROUP_CAUTIONS.clean} acts={CHANGES} />
      <Group
        session={session}
        title="Tighten the key's screw, with a new drop of thread locker"
        caution={GROUP_CAUTIONS.locker}
        acts={SERVICE.driver_Nm.map((torque_Nm) => ({ type: "screw.tightened", torque_Nm }))}
      />
      <Lubricate session={session} />
      {session.visit.task.lock.kind === "electronic" && <Batteries session={session} />}
    </section>
  );
}
