import { TextTable } from "../parts/TextTable";
import type { TableModel } from "../pictures/charts/figureModel";

/** A table that may be wider than its place, and then scrolls there alone. */
export function ScrolledTable({ table }: { readonly table: TableModel }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="relative min-w-0 overflow-x-auto" aria-label={table.caption} tabIndex={0}>
      <TextTable {...table} />
    </section>
  );
}
