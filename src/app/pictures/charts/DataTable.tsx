import type { TableModel } from "./figureModel";

/** A table of words and figures; the first column heads its rows. */
export function DataTable({ table: { caption, head, rows } }: { readonly table: TableModel }) {
  return (
    <table>
      <caption>{caption}</caption>
      <thead>
        <tr>
          {head.map((text) => (
            <th key={text} scope="col">
              {text}
            </th>
          ))}
        </tr>
      </thead>
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
