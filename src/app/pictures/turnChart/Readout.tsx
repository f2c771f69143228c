interface Props {
  readonly told: { readonly name: string; readonly detail: string } | null;
  /** Whether it follows the keyboard: only then is it read out as it changes. */
  readonly isSpoken: boolean;
  readonly hasGhost: boolean;
  /** Whether left turns go to the left on the chart: the face's numbers grow the other way. */
  readonly isMirrored: boolean;
}

/** One line below the chart: the numbers of the point asked for, or what the signs mean. */
export function Readout({ told, isSpoken, hasGhost, isMirrored }: Props) {
  return (
    <div className="turn-chart-readout">
      <p className="turn-chart-told-text" aria-live={isSpoken ? "polite" : "off"}>
        {told && (
          <>
            <b>{told.name}</b> {told.detail}
          </>
        )}
      </p>
      {told === null && <Key hasGhost={hasGhost} isMirrored={isMirrored} />}
    </div>
  );
}

const SIGNS = [
  { name: "left", sign: <path className="turn-chart-key-left" d="M0,6H18M13,3l4,3l-4,3" /> },
  { name: "right", sign: <path className="turn-chart-key-right" d="M0,6H18M5,3l-4,3l4,3" /> },
  { name: "arrival", sign: <circle className="turn-chart-arrival" cx="9" cy="6" r="2.8" /> },
  { name: "stop", sign: <circle className="turn-chart-stop" cx="9" cy="6" r="3.4" /> },
];
const GHOST = { name: "compared with", sign: <path className="turn-chart-ghost" d="M0,6H18" /> };

function Key({ hasGhost, isMirrored }: Pick<Props, "hasGhost" | "isMirrored">) {
  return (
    <ul className="turn-chart-key" aria-hidden="true">
      {[...SIGNS, ...(hasGhost ? [GHOST] : [])].map(({ name, sign }) => (
        <li key={name}>
          <svg viewBox="0 0 18 12" width="18" height="12">
            <title>{name}</title>
            <g transform={isMirrored ? "matrix(-1 0 0 1 18 0)" : undefined}>{sign}</g>
          </svg>
          {name}
        </li>
      ))}
    </ul>
  );
}
