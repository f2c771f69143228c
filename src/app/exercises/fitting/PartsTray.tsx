import { useSelector } from "@xstate/react";
import { useState } from "react";
import type { LockerPlace } from "../../../fitting/assembly";
import { farthestIn } from "../../../fitting/fittedLock";
import type { BoardTouch, FittingAct } from "../../../fitting/fittingAct";
import type { Washer } from "../../../fitting/washerStack";
import { Button } from "../../parts/controls/Button";
import { NumberField } from "../../parts/controls/NumberField";
import { Select } from "../../parts/controls/Select";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import type { FittingSession } from "./fittingSession";
import { HINDRANCE_WORDS } from "./fittingWords";

interface TrayProps {
  readonly session: FittingSession;
}

interface ActButtonsProps extends TrayProps {
  readonly acts: readonly { readonly label: string; readonly act: FittingAct | (() => void) }[];
}

function ActButtons({ session, acts }: ActButtonsProps) {
  const isClosed = useSelector(session.chart, stateOf) === "declared";
  return (
    <div className="row">
      {acts.map(({ label, act }) => (
        <Button
          key={label}
          className="slim"
          disabled={isClosed}
          onClick={() => (typeof act === "function" ? act() : session.act(act))}
        >
          {label}
        </Button>
      ))}
    </div>
  );
}

const STACKS: readonly (readonly Washer[])[] = [
  [],
  ["flat"],
  ["spring"],
  ["flat", "flat"],
  ["flat", "spring"],
  ["spring", "flat"],
  ["flat", "flat", "spring"],
  ["spring", "flat", "flat"],
  ["flat", "spring", "spring"],
];
const stackText = (stack: readonly Washer[]) => (stack.length === 0 ? "none" : stack.join(", "));

function WasherChoice({ session }: TrayProps) {
  const isClosed = useSelector(session.chart, stateOf) === "declared";
  const { washers } = session.assembly;
  return (
    <label className="row">
      Washers, from the cam out
      <Select
        value={stackText(washers)}
        disabled={isClosed}
        choices={STACKS.map((stack) => [stackText(stack), stackText(stack)])}
        onChoice={(chosen) => {
          const stack = STACKS.find((one) => stackText(one) === chosen);
          if (stack !== undefined) session.act({ type: "washers.put", washers: stack });
        }}
      />
    </label>
  );
}

function CutField({ session }: TrayProps) {
  const { length_mm } = session.assembly.spindle;
  const [asked_mm, setAsked] = useState(length_mm);
  return (
    <div className="row items-end">
      <NumberField
        label="Cut to, mm from the dial's back"
        value={asked_mm}
        onNumber={(typed) => setAsked(typed ?? 0)}
        size={6}
      />
      <ActButtons
        session={session}
        acts={[
          { label: "Saw off", act: { type: "spindle.cut", length_mm: asked_mm } },
          { label: "File and chamfer the end", act: { type: "spindle.dressed" } },
          { label: "Take the spare spindle", act: { type: "spindle.replaced" } },
        ]}
      />
      <p className="text-small text-soft">
        The spindle is {length_mm.toFixed(1)} mm long. {session.assembly.spares === 0 ? "No spare" : "One spare"} in the
        tray.
      </p>
    </div>
  );
}

const LOCKER: readonly { readonly at: LockerPlace; readonly label: string }[] = [
  { at: "key-screw", label: "Thread locker on the key's screw" },
  { at: "spindle-thread", label: "Thread locker on the spindle's thread" },
  { at: "wheels", label: "Thread locker on the wheels" },
];

/** How hard the key's screw is turned, in parts of what it needs to hold. */
const TORQUES = [
  ["lightly", 0.5],
  ["firmly", 1.5],
  ["hard", 3],
] as const;

function DialButtons({ session }: TrayProps) {
  const { perTurn } = session.lock;
  const by = (part: number): FittingAct => ({ type: "dial.screwed", by: part });
  const untilItTouches = by(farthestIn(session.lock, session.assembly.spindle.length_mm));
  return (
    <>
      <ActButtons
        session={session}
        acts={[
          { label: "In until it touches", act: untilItTouches },
          { label: "In 1 turn", act: by(perTurn) },
          { label: "In 10", act: by(10) },
          { label: "In 1", act: by(1) },
        ]}
      />
      <ActButtons
        session={session}
        acts={[
          { label: "Take the dial out", act: { type: "dial.taken" } },
          { label: "Out 1 turn", act: by(-perTurn) },
          { label: "Out 10", act: by(-10) },
          { label: "Out 1", act: by(-1) },
        ]}
      />
    </>
  );
}

/** What there is to do in the body of an electronic lock. */
function BoardButtons({ session }: TrayProps) {
  const touch = (act: BoardTouch) => () => session.touchBoard(act);
  return (
    <ActButtons
      session={session}
      acts={[
        { label: "Put the wrist strap on", act: { type: "strap.put" } },
        { label: "Take the wrist strap off", act: { type: "strap.taken" } },
        { label: "Plug the encoder's cable in", act: touch({ type: "cable.plugged" }) },
        { label: "Pull the encoder's cable", act: touch({ type: "cable.pulled" }) },
        { label: "Battery: red lead to plus", act: touch({ type: "battery.connected", leads: "right" }) },
        { label: "Battery: red lead to minus", act: touch({ type: "battery.connected", leads: "reversed" }) },
        { label: "Disconnect the battery", act: touch({ type: "battery.disconnected" }) },
        { label: "Replace the fuse", act: touch({ type: "fuse.replaced" }) },
        { label: "Replace the board", act: touch({ type: "board.replaced" }) },
      ]}
    />
  );
}

/** The parts in the tray, and what one can do with each. Nothing is locked: what stands in the way says so. */
export function PartsTray({ session }: TrayProps) {
  const { stopped } = useSelector(session.chart, memoryOf);
  const { board } = session.assembly;
  return (
    <section className="panel stack" aria-label="Parts">
      <h2>Parts</h2>
      <p className="min-h-[1.45em] font-semibold" role="status">
        {stopped === null ? "" : HINDRANCE_WORDS[stopped]}
      </p>
      <h3>Lock body</h3>
      <WasherChoice session={session} />
      <ActButtons
        session={session}
        acts={[
          { label: "Hang it by one screw", act: { type: "body.hung" } },
          { label: "Tighten all screws", act: { type: "body.tightened" } },
          { label: "Take the body off", act: { type: "body.taken" } },
        ]}
      />
      <h3>Ring</h3>
      <ActButtons
        session={session}
        acts={[
          { label: "Put it on by eye", act: () => session.putRing(false) },
          { label: "Put it on over the bushing", act: () => session.putRing(true) },
          { label: "Turn it left 0.5", act: { type: "ring.turned", by: 0.5 } },
          { label: "Turn it right 0.5", act: { type: "ring.turned", by: -0.5 } },
          { label: "Tighten the ring", act: { type: "ring.tightened" } },
          { label: "Loosen the ring", act: { type: "ring.loosened" } },
          { label: "Take the ring off", act: { type: "ring.taken" } },
        ]}
      />
      <h3>Spindle</h3>
      <CutField key={session.assembly.spindle.length_mm} session={session} />
      <h3>Dial</h3>
      <DialButtons session={session} />
      <h3>Key</h3>
      <ActButtons
        session={session}
        acts={[
          { label: "Insert the key", act: { type: "key.put" } },
          { label: "Drive it home", act: { type: "key.driven" } },
          ...TORQUES.map(([how, part]) => {
            const torque_Nm = part * session.lock.sizes.screwHolds_Nm;
            return {
              label: `Screw ${how}, ${torque_Nm.toFixed(1)} Nm`,
              act: { type: "key.screwed", torque_Nm },
            } as const;
          }),
          { label: "Remove the key", act: { type: "key.taken" } },
          ...LOCKER.filter(({ at }) => at !== "wheels" || board === null).map(({ at, label }) => ({
            label,
            act: { type: "locker.dropped", at } as const,
          })),
        ]}
      />
      {board !== null && (
        <>
          <h3>Board and battery</h3>
          <BoardButtons session={session} />
        </>
      )}
      <h3>Strike and cover</h3>
      <ActButtons
        session={session}
        acts={[
          { label: "Hang the strike by one screw", act: () => session.hangStrike() },
          { label: "Strike up 0.5 mm", act: { type: "strike.moved", by_mm: 0.5 } },
          { label: "Strike down 0.5 mm", act: { type: "strike.moved", by_mm: -0.5 } },
          { label: "Tighten the strike", act: { type: "strike.tightened" } },
          { label: "Loosen the strike", act: { type: "strike.loosened" } },
          { label: "Put the cover on", act: { type: "cover.put" } },
          { label: "Take the cover off", act: { type: "cover.taken" } },
        ]}
      />
    </section>
  );
}
