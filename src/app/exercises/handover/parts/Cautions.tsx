import { Lines } from "../../../parts/Lines";

interface CautionsProps {
  readonly cautions: readonly string[];
  /** Where they come from. */
  readonly source: string;
}

/** What can hurt, where the work is done. */
export function Cautions({ cautions, source }: CautionsProps) {
  return (
    <section className="panel" aria-label="Cautions">
      <h2>On a real door</h2>
      <Lines className="grid gap-2 text-small" of={cautions} />
      <p className="mt-3 text-soft text-fine">Source: {source}</p>
    </section>
  );
}
