interface NamedValuesProps {
  readonly rows: readonly (readonly [name: string, value: string | null])[];
  /** What the list is of, for a screen reader. */
  readonly label: string;
}

/** A list of names and values. */
export function NamedValues({ rows, label }: NamedValuesProps) {
  return (
    <dl className="pairs mt-4" aria-label={label}>
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
