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
    <div className="min-h-[18px] max-[480px]:min-h-[36px] text-fine leading-[18px] text-soft">
      <p aria-live={isSpoken ? "polite" : "off"}>
        {told && (
          <>
            <b className="mr-2 font-semibold text-ink">{told.name}</b> {told.detail}
          </>
        )}
      </p>
      {told === null && <Key hasGhost={hasGhost} isMirrored={isMirrored} />}
    </div>
  );
}

const SIGNS = [
  { name: "left", sign: <path className="stroke-ink" strokeWidth={2.25} d="M0,6H18M13,3l4,3l-4,3" /> },
  { name: "right", sign: <path className="stroke-accent" strokeWidth={1.25} d="M0,6H18M5,3l-4,3l4,3" /> },
  {
    name: "arrival",
    sign: <circle className="turn-chart-arrival fill-plate stroke-ink" strokeWidth={1.25} cx="9" cy="6" r="2.8" />,
  },
  { name: "stop", sign: <circle className="turn-chart-stop fill-ink" cx="9" cy="6" r="3.4" /> },
];
const GHOST = {
  name: "compared with",
  sign: <path className="turn-chart-ghost fill-none stroke-line" strokeWidth={1} strokeDasharray="5 3" d="M0,6H18" />,
};

function Key({ hasGhost, isMirrored }: Pick<Props, "hasGhost" | "isMirrored">) {
  return (
    <ul className="plain flex flex-wrap gap-x-4" aria-hidden="true">
      {[...SIGNS, ...(hasGhost ? [GHOST] : [])].map(({ name, sign }) => (
        <li className="flex items-center gap-2" key={name}>
          <svg className="fill-none" viewBox="0 0 18 12" width="18" height="12">
            <title>{name}</title>
            <g transform={isMirrored ? "matrix(-1 0 0 1 18 0)" : undefined}>{sign}</g>
          </svg>
          {name}
        </li>
      ))}
    </ul>
  );
}
