import { HeadRow } from "../../parts/HeadRow";
import type { TableModel } from "./figureModel";

/** A table of words and figures; the first column heads its rows. */
export function DataTable({ table: { caption, head, rows } }: { readonly table: TableModel }) {
  return (
    <table>
      <caption>{caption}</caption>
      <HeadRow of={head} />
      <tbody>
        {rows.map(([first, ...rest], i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows keep their place
          <tr key={i}>
            <th scope="row">{first}</th>
            {rest.map((text, k) => (
              <td key={head[k + 1]}>{text}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
