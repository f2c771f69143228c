import { HeadRow } from "./HeadRow";

interface TextTableProps {
  readonly caption?: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly className?: string;
}

/** A table of words and figures; the first cell heads its row. */
export function TextTable({ caption, head, rows, className }: TextTableProps) {
  return (
    <table className={className}>
      {caption !== undefined && <caption>{caption}</caption>}
      <HeadRow of={head} />
      <tbody>
        {rows.map(([first, ...rest], i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows keep their place
          <tr key={i}>
            <th scope="row">{first}</th>
            {rest.map((text, k) => (
              <td key={head[k + 1]} data-head={head[k + 1]}>
                {text}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The same, where a narrow screen has no room for columns: there each cell stands below the one before it. */
export function StackedTable(props: TextTableProps) {
  return (
    <div className="stacks overflow-x-auto">
      <TextTable {...props} />
    </div>
  );
}
