import type { Situation } from "../../../../handover/run/rules/situation";
import { situationLines } from "../../../../handover/run/situationWords";

interface ScenePictureProps {
  readonly situation: Situation;
}

interface FigureProps {
  readonly x: number;
  readonly y: number;
}

/** Somebody seen from above. */
function Figure({ x, y }: FigureProps) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <ellipse className="fill-metal-2 stroke-line" rx={17} ry={9} />
      <circle className="scene-head fill-plate stroke-ink" r={7} />
    </g>
  );
}

/** The same, with who it is. */
function Person({ x, y, label }: FigureProps & { readonly label: string }) {
  return (
    <>
      <Figure x={x} y={y} />
      <text className="text-small fill-ink" textAnchor="middle" x={x} y={y + 27}>
        {label}
      </text>
    </>
  );
}

/** The leaf with its lock, bolt and holdback, hinged at the left end of the opening. */
function Leaf({ situation }: ScenePictureProps) {
  const isShut = situation.door === "shut";
  const isBack = situation.bolt === "retracted";
  return (
    <g transform={`translate(120 100) rotate(${isShut ? 0 : 68})`} className="[transition:transform_250ms_ease-out]">
      <rect className="scene-door fill-plate stroke-ink" strokeWidth={1.5} x={0} y={-6} width={118} height={12} />
      <circle className="fill-ink" r={4} />
      <rect className="scene-case fill-metal-2 stroke-ink" x={88} y={-17} width={24} height={11} />
      <rect className="fill-ink" x={isBack ? 104 : 112} y={-3} width={isBack ? 12 : 20} height={6} />
      <circle className="fill-ink" cx={100} cy={11} r={5} />
      {situation.holdback === "on" && (
        <path className="scene-holdback fill-none stroke-accent" strokeWidth={3} d="M 108 -22 V -2 M 103 -22 H 113" />
      )}
    </g>
  );
}

/** The door and who is inside, without words, for a place too small to read them. */
export function SmallScene({ situation }: ScenePictureProps) {
  return (
    <svg className="scene-small row-span-2 h-[48px]" viewBox="100 26 200 156" aria-hidden="true">
      <rect className="fill-well" x={20} y={12} width={320} height={88} />
      <path className="fill-none stroke-ink" strokeWidth={5} d="M 10 100 H 116 M 242 100 H 350" />
      <Leaf situation={situation} />
      {situation.inside !== "nobody" && <Figure x={272} y={58} />}
    </svg>
  );
}

const DOOR = { open: "door open", shut: "door shut" } as const;
const BOLT = { thrown: "bolt thrown", spunOff: "bolt thrown, spun off", retracted: "bolt back" } as const;
const INSIDE = { nobody: "", able: "can open", unable: "shown nothing" } as const;

/**
 * The door from above; the list beneath says the same in words.
 *
 * @param sign - what is wrong at the door; empty where nothing is, or in a sitting, which does not tell it
 */
export function ScenePicture({ situation, sign: alarm }: ScenePictureProps & { readonly sign: string }) {
  return (
    <div className="scene order-2 grid grid-cols-[minmax(0,1.25fr)_minmax(0,1fr)] gap-4 p-4 plate">
      <svg className="block w-full" viewBox="0 0 360 212" aria-hidden="true">
        <rect className="fill-well" x={20} y={12} width={320} height={88} />
        <path
          className="fill-none stroke-ink"
          strokeWidth={5}
          d="M 10 100 H 116 M 242 100 H 350 M 20 100 V 12 H 340 V 100"
        />
        <text className="text-small fill-soft" textAnchor="start" x={30} y={30}>
          inside
        </text>
        <text className="text-small fill-soft" textAnchor="start" x={30} y={124}>
          corridor
        </text>
        <Leaf situation={situation} />
        {situation.inside !== "nobody" && <Person x={272} y={50} label={INSIDE[situation.inside]} />}
        <Person x={262} y={146} label="you" />
        <text className="text-small fill-ink" textAnchor="end" x={340} y={190}>
          {DOOR[situation.door]}
        </text>
        <text className="text-small fill-ink" textAnchor="end" x={340} y={207}>
          {BOLT[situation.bolt]}
          {situation.holdback === "on" && ", held back"}
        </text>
        {alarm !== "" && (
          <g className="fill-accent">
            <rect x={128} y={34} width={104} height={26} />
            <text className="fill-on-accent text-body font-semibold" textAnchor="middle" x={180} y={52}>
              {alarm}
            </text>
          </g>
        )}
      </svg>
      <dl className="pairs" aria-label="State of the door">
        {situationLines(situation).map(({ region, label, words }) => (
          <div key={region}>
            <dt>{label}</dt>
            <dd data-testid={`state-${region}`}>{words}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
