interface DialLightProps {
  /** Ids of its gradients begin with it. */
  readonly name: string;
  /** How far what is lit is turned, degrees clockwise. */
  readonly rotation: number;
}

const STOPS = ["light", "middle", "dark"] as const;

function Edge({ id, stops, rotation }: { id: string; stops: readonly (typeof STOPS)[number][]; rotation: number }) {
  return (
    <linearGradient id={id} x1="0.35" y1="0" x2="0.65" y2="1" gradientTransform={`rotate(${-rotation} 0.5 0.5)`}>
      {stops.map((stop, k) => (
        <stop key={stop} offset={k / 2} className={`dial-edge-${stop}`} />
      ))}
    </linearGradient>
  );
}

/** Light from above, a little from the left. It stays where it is while the dial turns under it. */
export function DialLight({ name, rotation }: DialLightProps) {
  return (
    <>
      <Edge id={`${name}-raised`} stops={STOPS} rotation={0} />
      <Edge id={`${name}-sunken`} stops={STOPS.toReversed()} rotation={0} />
      <Edge id={`${name}-knob-edge`} stops={STOPS} rotation={rotation} />
      <linearGradient
        id={`${name}-knob`}
        x1="0"
        y1="0"
        x2="0"
        y2="1"
        gradientTransform={`rotate(${-rotation} 0.5 0.5)`}
      >
        <stop offset="0" className="dial-light" />
        <stop offset="1" className="dial-shade" />
      </linearGradient>
      <radialGradient id={`${name}-cast`}>
        <stop offset="0.82" className="dial-cast" />
        <stop offset="1" className="dial-cast-end" />
      </radialGradient>
    </>
  );
}
