import { HeadRow } from "./HeadRow";

interface TextTableProps {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Rows of plain text; the first cell heads its row. */
export function TextTable({ heads, rows }: TextTableProps) {
  return (
    <div className="stacks overflow-x-auto">
      <table>
        <HeadRow of={heads} />
        <tbody>
          {rows.map((row) => (
            <tr key={row.join("|")}>
              {row.map((cell, k) =>
                k === 0 ? (
                  <th key={heads[k]} scope="row">
                    {cell}
                  </th>
                ) : (
                  <td key={heads[k]} data-head={heads[k]}>
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
