import { HeadRow } from "../../parts/HeadRow";
import { shownName } from "../../parts/shownName";
import { type ClassResults, markTexts, outcomeText, type PersonsResult, type SittingLine } from "./resultWords";

interface CellProps {
  readonly result: PersonsResult | undefined;
  /** Whose result of what, for a screen reader. */
  readonly of: string;
  readonly addressOf: (sittingId: string) => string;
}

function Sat({
  line,
  word,
  of,
  addressOf,
}: { readonly line: SittingLine; readonly word: string } & Omit<CellProps, "result">) {
  const marks = markTexts(line);
  return (
    <span className="block">
      {word}
      <a href={addressOf(line.sittingId)}>
        {outcomeText(line)}
        <span className="visually-hidden">, {of}</span>
      </a>
      {marks.length > 0 && <small className="block">{marks.join(", ")}</small>}
    </span>
  );
}

function Cell({ result, ...rest }: CellProps) {
  if (result === undefined) return <span className="text-soft">not for this person</span>;
  const { best, latest, begun, others } = result;
  if (latest === null) return <span className="text-soft">not begun</span>;
  const isOne = best === null || best.sittingId === latest.sittingId;
  return (
    <>
      {best !== null && <Sat line={best} word={begun > 1 ? "Best: " : ""} {...rest} />}
      {(!isOne || best === null) && <Sat line={latest} word={begun > 1 ? "Latest: " : ""} {...rest} />}
      {begun > 1 && others.length === 0 && <small className="block">{begun} attempts</small>}
      {others.length > 0 && (
        <details className="text-small">
          <summary>{begun} attempts</summary>
          {others.map((line) => (
            <Sat key={line.sittingId} line={line} word={`Attempt ${line.attempt}: `} {...rest} />
          ))}
        </details>
      )}
    </>
  );
}

interface TableProps {
  readonly results: ClassResults;
  readonly addressOf: (sittingId: string) => string;
}

/** People by sheets: what each came to; a result leads to its sitting. */
export function ResultTable({ results: { assignments, people }, addressOf }: TableProps) {
  const titles = assignments.map(({ title }) => shownName(title));
  return (
    <div className="stacks overflow-x-auto" tabIndex={-1}>
      <table>
        <caption className="visually-hidden">Results</caption>
        <HeadRow
          of={["Name", ...titles.map((title, k) => (titles.indexOf(title) < k ? `${title} (${k + 1})` : title))]}
        />
        <tbody>
          {people.map(({ personId, name, results }) => (
            <tr key={personId}>
              <th scope="row" className="wrap-anywhere">
                {shownName(name)}
              </th>
              {assignments.map(({ id }, k) => (
                <td key={id} data-head={titles[k]}>
                  <Cell
                    result={results.find(({ assignmentId }) => assignmentId === id)}
                    of={`${shownName(name)}, ${titles[k]}`}
                    addressOf={addressOf}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
