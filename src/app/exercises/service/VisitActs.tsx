import { useState } from "react";
import { CELL_TYPES } from "../../../service/batteries";
import { LUBRICANTS } from "../../../service/papers";
import { LUBRICATED_PLACES } from "../../../service/servicedLock";
import { instrumentsFor, looksFor, QUESTIONS, type VisitAct } from "../../../service/visitAct";
import { Button } from "../../parts/controls/Button";
import { Select } from "../../parts/controls/Select";
import type { VisitSession } from "./visitSession";
import { INSTRUMENT_WORDS, LOOK_WORDS, PLACE_WORDS, QUESTION_WORDS } from "./visitWords";

export interface VisitProps {
  readonly session: VisitSession;
}

type Labeled = readonly [label: string, act: VisitAct];

interface GroupProps extends VisitProps {
  readonly title: string;
  readonly acts: readonly Labeled[];
}

function Group({ session, title, acts }: GroupProps) {
  return (
    <section className="stack gap-1" aria-label={title}>
      <h3 className="text-small">{title}</h3>
      <div className="row">
        {acts.map(([label, act]) => (
          <Button key={label} className="slim" onClick={() => session.act(act, label)}>
            {label}
          </Button>
        ))}
      </div>
    </section>
  );
}

/** The torques that the driver can be set to, Nm. */
const TORQUES_Nm = [0.2, 0.5, 0.6, 0.7, 1.1];

const CHANGES: readonly Labeled[] = [
  ["Wipe the ring dry", { type: "ring.cleaned" }],
  ["Remove paint", { type: "paint.removed" }],
  ["Center the ring over the bushing", { type: "ring.centered" }],
  ["Replace the key", { type: "key.replaced" }],
  ["Replace the spindle's bearing", { type: "bearing.replaced" }],
];

/** What a technician asks, looks at and measures. */
export function InspectActs({ session }: VisitProps) {
  const { kind } = session.visit.task.lock;
  return (
    <>
      <Group
        session={session}
        title="Ask the holder"
        acts={QUESTIONS.map((question) => [QUESTION_WORDS[question], { type: "asked", question }])}
      />
      <Group
        session={session}
        title="Door and cover"
        acts={[
          ["Have the door opened", { type: "door.opened" }],
          ["Hold the door open", { type: "door.held" }],
          ["Wear the wrist strap", { type: "strap.worn" }],
          ["Take the cover off", { type: "cover.taken" }],
          ["Put the cover on", { type: "cover.put" }],
          ["Shut the door", { type: "door.shut" }],
        ]}
      />
      <Group
        session={session}
        title="Prove, look and measure"
        acts={[
          ["Dial the combination", { type: "tried" }],
          ...looksFor(kind).map((at): Labeled => [`Look at ${LOOK_WORDS[at]}`, { type: "looked", at }]),
          ...instrumentsFor(kind).map((one): Labeled => [INSTRUMENT_WORDS[one], { type: "measured", with: one }]),
        ]}
      />
    </>
  );
}

function Lubricate({ session }: VisitProps) {
  const [at, setPlace] = useState<(typeof LUBRICATED_PLACES)[number]>("bearing");
  const [what, setWhat] = useState<(typeof LUBRICANTS)[number]>("grease");
  const places = LUBRICATED_PLACES.filter((one) => one !== "wheels" || session.visit.task.lock.kind === "wheel-pack");
  return (
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
      <Button
        className="slim"
        onClick={() =>
          session.act({ type: "lubricated", at, with: what }, `Lubricate the ${PLACE_WORDS[at]} with ${what}`)
        }
      >
        Lubricate
      </Button>
    </div>
  );
}

function Batteries({ session }: VisitProps) {
  const [cells, setCells] = useState<(typeof CELL_TYPES)[number]>("lithium");
  return (
    <div className="row">
      <Select
        aria-label="Type of new cells"
        value={cells}
        choices={CELL_TYPES.map((one) => [one, one] as const)}
        onChoice={setCells}
      />
      <Button
        className="slim"
        onClick={() =>
          session.act({ type: "batteries.replaced", which: "set", cells }, `Replace all four cells by ${cells}`)
        }
      >
        Replace all four cells
      </Button>
      <Button
        className="slim"
        onClick={() => session.act({ type: "batteries.replaced", which: "one", cells }, `Replace one cell by ${cells}`)}
      >
        Replace one cell
      </Button>
    </div>
  );
}

/** What changes something in the lock. To leave it alone, do none of it. */
export function ChangeActs({ session }: VisitProps) {
  return (
    <section className="panel stack" aria-label="Change something, or leave it alone">
      <h2>Change something, or leave it alone</h2>
      <Group session={session} title="Clean, center and replace" acts={CHANGES} />
      <Group
        session={session}
        title="Tighten the key's screw, with a new drop of thread locker"
        acts={TORQUES_Nm.map((torque_Nm) => [
          `Tighten to ${torque_Nm.toFixed(1)} Nm`,
          { type: "screw.tightened", torque_Nm },
        ])}
      />
      <h3 className="text-small">Lubricate</h3>
      <Lubricate session={session} />
      {session.visit.task.lock.kind === "electronic" && (
        <>
          <h3 className="text-small">New cells</h3>
          <Batteries session={session} />
        </>
      )}
    </section>
  );
}
