import { type Caution, caution } from "../../../../handover/run/cautions";

/** Cautions where they apply, each with its source. */
export function RunCautions({ ids }: { readonly ids: readonly Caution["id"][] }) {
  if (ids.length === 0) return null;
  return (
    <ul className="plain basis-full text-small text-soft leading-[1.35] print:hidden">
      {ids.map((id) => (
        <li key={id}>
          {caution(id).text} <small className="text-fine">({caution(id).source})</small>
        </li>
      ))}
    </ul>
  );
}
