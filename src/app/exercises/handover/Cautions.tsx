interface CautionsProps {
  readonly cautions: readonly string[];
  /** Where they come from. */
  readonly source: string;
}

/** What can hurt, where the work is done. */
export function Cautions({ cautions, source }: CautionsProps) {
  return (
    <section className="panel handover-cautions" aria-label="Cautions">
      <h2>On a real door</h2>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p className="handover-source">Source: {source}</p>
    </section>
  );
}
